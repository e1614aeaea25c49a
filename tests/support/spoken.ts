import { runningOutlooks } from '../../src/repair/book.js';
import { isJobCommand } from '../../src/repair/commands.js';
import { begunIn } from '../../src/repair/correct-cards.js';
import { sameCure } from '../../src/repair/cure-ref.js';
import { jobNo, personId } from '../../src/repair/ids.js';
import type { Outlook } from '../../src/repair/outlook.js';
import type { Language } from '../../src/repair/shop.js';
import type { Answer } from '../../src/reply/answer.js';
import { composeEntry } from '../../src/reply/compose/entry.js';
import { composePost } from '../../src/reply/compose/post.js';
import { composeRefusal } from '../../src/reply/compose/refusal.js';
import { composeAir, composeUndone } from '../../src/reply/compose/shop.js';
import type { Setting } from '../../src/reply/compose/words.js';
import { toText } from '../../src/reply/to-text.js';
import { on } from './joint.js';
import type { Shift } from './shift.js';

interface Spoken {
  readonly lines: readonly string[];
  /** `label: line` of every button, `…` where its reason is to be written. */
  readonly buttons: readonly string[];
}

const spoken = (answer: Answer): Spoken => ({ lines: toText(answer).split('\n'), buttons: answer.buttons.map(({ label, line, asks }) => `${label}: ${line}${asks === undefined ? '' : ' …'}`) });

/** Says a command on a shift and puts the answer into words, as the desk would to somebody of that language. */
export function hears(shift: Shift, who: string, when: string, short: Parameters<Shift['says']>[2], language: Language = 'en'): Spoken {
  shift.until(when);
  const now = on(when);
  const setting: Setting = { shop: shift.shop, now, language };
  const command = shift.command(short, now);
  const before = running(shift, who, when);
  const decision = shift.says(who, when, short);
  if (!decision.ok) return spoken(composeRefusal(decision.refusal, setting));
  const entry = decision.facts.length === 0 ? null : (shift.facts.at(-1)?.entry ?? null);
  const { about, notes, facts } = decision;
  const after = about === null ? undefined : shift.outlooks(about.job).find(({ cure }) => sameCure(cure.ref, about.cure));
  if (about !== null && after !== undefined && (!isJobCommand(command) || command.kind === 'enter')) {
    const was = before.find(({ cure }) => cure.job === about.job && sameCure(cure.ref, about.cure)) ?? null;
    return spoken(composeEntry({ command, by: personId(who), before: was, after, notes, entry }, setting));
  }
  const changed = before.flatMap((one) => running(shift, who, when).filter((other) => begun(shift, one) === begun(shift, other)).map((other) => ({ before: one, after: other })));
  const [first] = facts;
  if (first?.fact.type === 'air' && entry !== null) return spoken(composeAir({ value: first.fact.value, typed: first.fact.typed, humidity: first.fact.humidity, at: first.happenedAt, entry, changed, tooCold: [] }, setting));
  return spoken(composeUndone(notes.flatMap((note) => (note.note === 'undone' ? [note.what] : []))[0] ?? null, changed, setting));
}

const running = (shift: Shift, who: string, when: string): Outlook[] => runningOutlooks(shift.situation(who, on(when)).book, shift.shop, shift.jobs());

function begun(shift: Shift, { cure }: Outlook): string {
  const { joint, card, run } = begunIn(cure.ref, shift.job(cure.job).all);
  return `${cure.job} ${joint} ${card} ${run}`;
}

/** The posts of a kind so far, in words. */
export function postsOf(shift: Shift, kind: Shift['posts'][number]['kind'], language: Language = 'en'): Spoken[] {
  return shift.posts.filter((post) => post.kind === kind).flatMap((post) => {
    const outlook = shift.outlooks(jobNo(post.job)).find(({ cure }) => sameCure(cure.ref, post.cure));
    return outlook === undefined ? [] : [spoken(composePost(post, outlook, 'in time', { shop: shift.shop, now: post.saidAt, language }))];
  });
}
