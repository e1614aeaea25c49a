import type { DEW_EN } from './dew-en.js';

export const DEW_ES: Readonly<Record<keyof typeof DEW_EN, string>> = {
  'frost-point': 'Punto de escarcha **{value}**: la humedad se posa como escarcha y eso no se seca con un trapo. **Primero calienta el metal.**',
  'dew-point': 'Punto de rocío {value}: metal, como mínimo **{least}**.',
  above: '{difference} por encima del punto de {point, select, frost {escarcha} other {rocío}} de {value}',
  below: '{difference} por debajo del punto de {point, select, frost {escarcha} other {rocío}} de {value}',
  'too-close': 'metal {margin}, hacen falta {needed}',
  'too-close-unread': 'metal demasiado cerca del punto de rocío, hacen falta {needed}',
};
