import type { QuestionCommand } from '../../src/repair/commands.js';
import { jobNo } from '../../src/repair/ids.js';

type Of<Kind extends QuestionCommand['kind']> = Extract<QuestionCommand, { readonly kind: Kind }>;

/** `what if 501 …`, changed as a test needs it. */
export const whatIfCommand = (change: Partial<Of<'what-if'>> = {}): Of<'what-if'> => ({ kind: 'what-if', job: jobNo('501'), joint: null, setting: null, heater: 'lamp', unheated: false, air: null, from: null, ...change });

/** `latest start 501 … by …`, changed as a test needs it. */
export const latestStartCommand = (change: Partial<Of<'latest-start'>> & Pick<Of<'latest-start'>, 'readyBy'>): Of<'latest-start'> => ({ kind: 'latest-start', job: jobNo('501'), joint: null, card: null, milestone: null, depth: null, ...change });
