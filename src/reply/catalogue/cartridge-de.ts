import type { CARTRIDGE_EN } from './cartridge-en.js';

export const CARTRIDGE_DE: Readonly<Record<keyof typeof CARTRIDGE_EN, string>> = {
  batch: 'Charge {batch}',
  expires: 'haltbar bis {text}',
  opened: 'offen seit {text}',
  'past-expiry': 'abgelaufen {text}',
  'open-too-long': 'offen seit {text}, erlaubt {days, plural, one {# Tag} other {# Tage}}',
  'bad-batch': 'Charge {batch} {faults}',
  'bad-cartridge': 'Kartusche {faults}',
  held: '**{title} GESPERRT: {why}.** Nur der Meister lässt es weitergehen: `release {job}` und warum.',
  'held-named': '**{title} GESPERRT: {why}.** Nur {foreman} lässt es weitergehen: `release {job}` und warum.',
  another: 'Eine andere vor dem Schließen hebt das auf: `{line}`.',
  noted: 'Kartusche notiert: {label}.',
  line: 'Kartusche: {label}.',
  'line-bad': 'Kartusche: {label}. **{why}.**',
  decide: '{title} **{why}**. Du entscheidest.',
  'may-not-hold': 'Abgelaufener Kleber erreicht seine Festigkeit vielleicht nicht. Eine andere Kartusche vor dem Schließen hebt die Sperre auf.',
  'may-not-hold-closed': 'Abgelaufener Kleber erreicht seine Festigkeit vielleicht nicht, und das Teil ist geschlossen.',
};
