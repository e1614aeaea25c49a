import type { CAUTIONS_EN } from './cautions-en.js';

export const CAUTIONS_ES: Readonly<Record<keyof typeof CAUTIONS_EN, string>> = {
  'before-work': 'Batería, airbags, alta tensión: ¿los dejó sin tensión una persona cualificada? Si no se sabe, pregunta al jefe de taller.',
  solvent: 'Vapores: puerta abierta; ni lámpara ni chispas hasta que esté seco. Los trapos, al cubo con tapa.',
  paste: 'Guantes, gafas de protección.',
  clamps: 'Gafas de protección. Dedos lejos de donde atrapan las mordazas.',
  'weld-wet': 'Solo donde lo indique el método de reparación. Extracción y mascarilla; cavidad despejada, sin guarnecidos, combustible ni cera cerca; una segunda persona con extintor.',
  'weld-after': 'El calor llega a un ancho de mano: puntos cortos, deja enfriar entre ellos, detente si huele. Una segunda persona con extintor.',
  'fire-watch': 'Alguien se queda y mira: la cara opuesta, la cavidad, los guarnecidos. Extintor a mano.',
  lamp: 'Nunca dejes una lámpara o manta sin vigilancia. Cerca, nada mojado de disolvente, ni neumático, ni canto de cristal, ni pieza de alta tensión.',
  battery: 'Calor suficiente para dañar una batería: ¿piezas de alta tensión sin tensión, y protegidas o desmontadas, según el fabricante del vehículo? Nunca dejes el calor sin vigilancia.',
  reading: 'Sonda, no el dedo, en el punto más frío. El metal desnudo y brillante engaña al infrarrojo.',
  'clamps-off': 'Quita las mordazas de una en una, si el método de reparación lo permite; detente si la holgura se mueve.',
  sanding: 'Mascarilla y aspiración. Polvo de aluminio y chispas de acero, nunca en el mismo aspirador.',
  filler: 'Endurecedor de peróxido: gafas de protección. Echar más no lo acelera.',
  isocyanate: 'Máscara con suministro de aire según la norma local; una mascarilla de papel no basta.',
  bake: '¿Fuera baterías, amortiguadores de gas y aerosoles? Cuenta el límite más bajo de todos los materiales de este coche.',
  wax: '**Desde ahora, ni soldar ni meter en el horno este coche**: la niebla arde.',
  glass: 'Sin portazos, una ventanilla entreabierta, la cinta se queda, el coche no se mueve.',
};
