import { PEOPLE_DE } from './people-de.js';
import { PEOPLE_EN } from './people-en.js';
import { PEOPLE_ES } from './people-es.js';
import { speaker } from './speaker.js';

/** Who has what, who may enter, who is not to be asked. */
export const sayPeople = speaker({ en: PEOPLE_EN, de: PEOPLE_DE, es: PEOPLE_ES });
