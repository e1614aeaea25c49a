import type { LIKELY_EN } from './likely-en.js';

export const LIKELY_ES: Readonly<Record<keyof typeof LIKELY_EN, string>> = {
  'if-read': '; sobre {at} si una lectura lo muestra',
  'likely-if-read': ', probablemente sobre {at} si una lectura lo muestra',
  'by-law': 'Según la propia ley de la hoja ({energy} kJ/mol), probablemente {at}; nunca se avisa por ella.',
  unannounced: 'Probablemente {at} (temperaturas tal como serán seguramente); aún no hay nada anunciado.',
  announced: 'Probablemente {at} (temperaturas tal como serán seguramente); lo anunciado es {due}.',
};
