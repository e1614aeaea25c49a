import type { REASON_EN } from './reason-en.js';

export const REASON_ES: Readonly<Record<keyof typeof REASON_EN, string>> = {
  title: 'Que siga',
  why: '¿Por qué?',
  stands: '{line} y lo que escribas; queda en toda respuesta posterior.',
  send: 'Enviar',
  cancel: 'Cancelar',
  'not-opened': 'No se pudo abrir el formulario. Escribe: `{line}` y por qué.',
  'not-written': 'Nada anotado: algo falló aquí. Envíalo otra vez.',
};
