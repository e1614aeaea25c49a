import type { Misread } from '../../grammar/reading.js';
import type { Refusal } from '../../repair/refusal.js';
import { nameOf } from '../../repair/people.js';
import { isStepRefusal } from '../../repair/step-refusal.js';
import type { Role } from '../../repair/shop.js';
import type { Answer } from '../answer.js';
import { composeStepRefusal } from './procedure-refusal.js';
import { holdWords, markedExample } from './state.js';
import { answer, button, capital, clock, degrees, lasting, MILESTONE_WORDS, percent, tidy, type Setting } from './words.js';

/** A line that was not understood: what was, what was not, the nearest valid form. Nothing was stored. */
export function composeMisread(misread: Misread, typed: string): Answer {
  const understood = misread.understood === '' ? '' : `Understood: ${misread.understood}. `;
  const unclear = misread.unclear === null ? `Needs ${misread.problem}.` : `Not understood: “${shortened(misread.unclear)}”, needs ${misread.problem}.`;
  return answer('refusal', [`${understood}${unclear} ${offered(misread.nearest, typed)} Nothing stored.`], misread.choices.map((choice) => button(choice.label, choice.line)));
}

/** A form that holds figures nobody typed is only an example; it must not be taken for what was meant. */
function offered(nearest: string, typed: string): string {
  const figures: readonly string[] = nearest.match(/\d+/g) ?? [];
  const own: readonly string[] = typed.match(/\d+/g) ?? [];
  return figures.every((figure) => own.includes(figure)) ? `Try: \`${nearest}\`.` : `Example of the form: \`${nearest}\`.`;
}

const shortened = (typed: string): string => {
  const letters = Array.from(typed);
  return letters.length <= 40 ? typed : `${letters.slice(0, 39).join('')}…`;
};

/** Why a command was not carried out, and what to do. One line each, buttons where they save typing. */
export function composeRefusal(refusal: Refusal, setting: Setting): Answer {
  return markedExample(composed(refusal, setting), 'card' in refusal && typeof refusal.card !== 'string' ? [refusal.card] : [], setting);
}

function composed(refusal: Refusal, setting: Setting): Answer {
  if (isStepRefusal(refusal)) return composeStepRefusal(refusal, setting);
  const refused = (sentence: string, buttons: readonly [string, string][] = []): Answer => answer('refusal', [sentence], buttons.map(([label, sent]) => button(label, sent)));
  const asked = (sentence: string, buttons: readonly [string, string][]): Answer => answer('question', [sentence], buttons.map(([label, sent]) => button(label, sent)));
  switch (refusal.code) {
    case 'which-job':
      return asked('Which job? Nothing stored yet.', refusal.choices.map(({ job, line }) => [job, line]));
    case 'which-question':
      return asked('Yes to which? More than one question is open. Nothing stored yet.', refusal.choices.map(({ label, line }) => [label, line]));
    case 'unknown-job':
      return asked(`No open job **${refusal.job}**.${refusal.choices.length > 0 ? ' Did you mean one of these?' : ` Start it: \`cure ${refusal.job} P1\`.`}`, refusal.choices.map(({ job, line }) => [job, line]));
    case 'new-job':
      return asked(`No open job **${refusal.job}**. One of these, or a new one? Nothing stored yet.`, [...refusal.choices.map(({ job, line }): [string, string] => [job, line]), [`New ${refusal.job}`, refusal.newLine]]);
    case 'which-joint':
      return asked(`${refusal.job}: which joint? Nothing stored yet.`, refusal.choices.map(({ joint, line }) => [joint, line]));
    case 'moved-away':
      return refused(`${refusal.job}: ${refusal.cards.join(', ')} went to **${refusal.to}**, entered here by mistake (moved ${clock(refusal.at, setting)} by ${nameOf(setting.shop, refusal.by)}). Nothing runs here.`);
    case 'onto-itself':
      return refused(`${refusal.job} is the same job. Nothing moved. Say both: \`move 501>502\`.`);
    case 'which-card':
      return asked(`${refusal.job}: which material card? ${refusal.choices.map(({ card }) => card).join(', ')}. Nothing stored yet.`, refusal.choices.slice(0, 5).map(({ card, line }) => [card, line]));
    case 'which-cure':
      return asked(`${refusal.job}: no ${refusal.named} runs there. Which cure? Nothing stored yet.`, refusal.choices.map(({ joint, card, line }) => [`${card} ${joint}`, line]));
    case 'nothing-runs':
      return refused(`${refusal.job}: nothing runs there.`);
    case 'already-running':
      return asked(`${refusal.job} ${refusal.joint}: ${refusal.card} runs already since ${clock(refusal.since, setting)}. Another joint?`, [['Other joint', refusal.otherJoint], ['Moved', `moved ${refusal.job} ${refusal.joint}`]]);
    case 'second-cure':
      return asked(`${refusal.job} ${refusal.joint}: ${refusal.card} runs since ${clock(refusal.since, setting)}. Second cure on this car, or the wrong job? Nothing stored yet.`, [['Second joint', refusal.otherJoint], ['Same joint', refusal.sameJoint]]);
    case 'already-closed':
      return asked(`${refusal.job} is closed since ${clock(refusal.at, setting)}. Shifted again? Then: moved.`, [['Moved', refusal.line]]);
    case 'not-closed':
      return asked(`${refusal.job} is not closed yet, so nothing could be moved.`, [['Closed', refusal.line]]);
    case 'future':
      return asked(`**${clock(refusal.at, setting)} is still to come** (now ${clock(setting.now, setting)}). Which time? Nothing stored yet.`, [['Now', refusal.nowLine], ['Yesterday', refusal.yesterdayLine]]);
    case 'long-ago':
      return asked(`**${clock(refusal.at, setting)}** is ${lasting(refusal.at, setting.now)} back. Right? Nothing stored yet.`, [['Yes', refusal.yesLine], ['Now', refusal.nowLine]]);
    case 'before-step':
      return refused(`${clock(refusal.at, setting)} is before the job was ${refusal.step} (${clock(refusal.stepAt, setting)}). Check the time. Nothing stored.`);
    case 'which-unit':
      return refusal.asCelsius === null
        ? refused(`**${tidy(refusal.value)}** is over this card's maximum ${degrees(refusal.maximum, setting)}. Nothing counted.`)
        : asked(`**${tidy(refusal.value)} what?** Over this card's ${degrees(refusal.maximum, setting)}. ${tidy(refusal.value)} °F = ${tidy(refusal.asCelsius)} °C. Nothing counted yet.`, [[`${tidy(refusal.value)} °F`, refusal.line]]);
    case 'over-lamp-maximum':
      return refused(`${degrees(refusal.value, setting)} is over the maximum of ${refusal.card} (${degrees(refusal.maximum, setting)}). Not noted as a stage: turn it down.`);
    case 'no-next-stage':
      return refused(`${refusal.job}: this card has no lamp recipe. Say the setting: \`lamp ${refusal.job} 60\`.`);
    case 'not-due':
      return refused(`${refusal.job} **NOT yet**: ${MILESTONE_WORDS[refusal.milestone]} ${refusal.dueAt === null ? 'has no time yet' : `earliest ${clock(refusal.dueAt, setting)}`} (${percent(refusal.share)}).`);
    case 'held':
      return refused(`${refusal.job} **HELD**, ${holdWords(refusal.reason, setting)}: the foreman decides.`);
    case 'check-first':
      return asked(`${refusal.job} **NOT yet**: ${MILESTONE_WORDS[refusal.milestone]} is not checked${refusal.dueAt === null ? '' : ` (earliest ${clock(refusal.dueAt, setting)})`}. Full heat on fresh paste bows the panel.`, [[`Lamp is at ${Math.round(refusal.setting)}`, refusal.line]]);
    case 'hotter-than-lamp':
      return asked(`${refusal.job}: joint **${degrees(refusal.value, setting)}** but lamp at ${degrees(refusal.setting, setting)}? Nothing counted yet. Lamp turned up: say that first.`, [['Reading is right', refusal.line]]);
    case 'air-too-hot':
      return asked(`Air **${degrees(refusal.value, setting)}**? Too hot for shop air. Nothing stored.`, refusal.asCelsius === null ? [] : [['°F', refusal.fahrenheitLine]]);
    case 'lamp-alone':
      return asked(lampAlone(refusal, setting), refusal.airLine === null ? [['I stay', refusal.stayLine]] : [['I stay', refusal.stayLine], ['Air only', refusal.airLine]]);
    case 'lamp-too-cold':
      return refused(`${degrees(refusal.value, setting)} is no setting of a lamp or pad. Nothing stored.`);
    case 'lamp-not-on-then':
      return refused(`${refusal.job}: no lamp was on at that time${refusal.since === null ? '' : ` (first heat ${clock(refusal.since, setting)})`}. Check the time. Nothing stored.`);
    case 'nothing-to-check':
      return refused(`${refusal.job}: no check is open.`);
    case 'nothing-asked':
      return refused('Which job? Nothing runs at present. Start one: `cure 501 P1`.');
    case 'no-heat':
      return refused(`${refusal.job}: no lamp was noted there. Switch one on: \`lamp ${refusal.job} 30\`.`);
    case 'lamp-elsewhere':
      return asked(`${capital(refusal.heater)} ${refusal.lamp} is on **${refusal.job}** by my book. Moved here? Nothing stored yet.`, [['Moved here', refusal.line]]);
    case 'unknown-lamp':
      return refused(unknownHeater(refusal, setting));
    case 'same-card':
      return refused(`${refusal.job} is ${refusal.card} already. Nothing changed.`);
    case 'card-runs-there':
      return refused(`${refusal.job} ${refusal.joint}: ${refusal.card} runs there already since ${clock(refusal.since, setting)}. If the two are one, scrap one of them. Nothing changed.`);
    case 'two-cures-there':
      return refused(`${refusal.job} ${refusal.joint}: ${refusal.cards.join(' and ')} run there. Scrap the wrong one, then start the right one. Nothing changed.`);
    case 'no-depth':
      return refused(`${refusal.card} does not harden by depth: leave the depth out. Nothing stored.`);
    case 'odd-depth':
      return refused(`**${tidy(refusal.millimetres)} mm** is no depth of a bead (${refusal.least} to ${refusal.most} mm). Nothing stored.`);
    case 'stranger':
      return refused(strangerRefused(refusal, setting));
    case 'wrong-role':
      return refused(`That is not for ${refusal.role === 'apprentice' || refusal.role === 'owner' ? 'an' : 'a'} ${refusal.role}: ${whoMay(refusal.may, setting)}. Nothing stored.`);
    case 'unknown-person':
      return refused(`Nobody called “${shortened(refusal.typed)}” here${refusal.known.length === 0 ? '' : `. Known: ${refusal.known.map((person) => nameOf(setting.shop, person)).join(', ')}`}. Nothing stored.`);
    case 'one-of-us':
      return refused(`**${nameOf(setting.shop, refusal.person)}** is one of the shop's people: who leaves is taken off shop.yaml. Nothing changed.`);
    case 'cannot-take':
      return refused(`${nameOf(setting.shop, refusal.person)} is ${refusal.role} and takes no jobs. Nothing changed.`);
    case 'to-yourself':
      return refused('They are yours already. Name somebody else. Nothing changed.');
    case 'nothing-to-hand':
      return refused('No open job of yours to hand over.');
    case 'not-in-handover':
      return refused(`${refusal.jobs.join(', ')}: not among your open jobs. Nothing changed.`);
    case 'nothing-offered':
      return refused('Nobody has offered you anything.');
    case 'offered-to-another':
      return refused(`That was offered to **${nameOf(setting.shop, refusal.to)}**: only they can accept it.`);
    case 'too-long-busy':
      return refused(`At most ${refusal.most / 60} h at a time. Nothing stored.`);
    case 'foreman-only':
      return refused(`Only the foreman may decide that${refusal.foreman === 'channel' ? '' : ` (${nameOf(setting.shop, refusal.foreman)})`}.`);
    case 'nothing-held':
      return refused(`${refusal.job}: nothing there waits for a decision. `);
    case 'nothing-to-undo':
      return refused('Nothing of yours to take back.');
    case 'undo-too-late':
      return refused(`That was ${lasting(refusal.enteredAt, setting.now)} ago: type the right figure as a new entry, or ask the foreman.`);
    case 'went-along':
      return refused(`Your entry went along to **${refusal.job}** (moved ${clock(refusal.at, setting)} by ${nameOf(setting.shop, refusal.by)}). Answer anew there, or ${nameOf(setting.shop, refusal.by)} takes the move back. Nothing changed.`);
    case 'not-yours':
      return refused(`That entry is ${nameOf(setting.shop, refusal.by)}'s. They or the foreman can take it back.`);
  }
}

/** Who may, by role and, where they are few, by name. */
function whoMay(roles: readonly Role[], { shop }: Setting): string {
  const named = shop.people.filter((person) => roles.includes(person.role) && person.role !== 'apprentice').map((person) => person.name);
  const words = roles.length > 1 ? `${roles.slice(0, -1).join(', ')} or ${roles.at(-1) ?? ''}` : roles.join('');
  return `${words}${named.length === 0 ? '' : ` (${named.slice(0, 3).join(', ')})`} may`;
}

function lampAlone({ job, heater, ends, closes, ...refusal }: Extract<Refusal, { code: 'lamp-alone' }>, setting: Setting): string {
  const needed = `would be needed until **${clock(ends, setting)}**`;
  const closed = closes === null ? 'the shop is closed' : `the shop closes ${clock(closes, setting)}`;
  return `**${job}**: ${heater} ${degrees(refusal.setting, setting)} ${needed}, ${closed}, and no ${heater} runs alone. Who stays? Nothing stored yet.`;
}

function strangerRefused({ person, foreman }: Extract<Refusal, { code: 'stranger' }>, { shop }: Setting): string {
  const whom = foreman === 'channel' ? 'the foreman' : nameOf(shop, foreman);
  return `**${nameOf(shop, person)}, you are not on the shop's list**, so nothing is stored. Asking is free: who waits, when 501. Ask ${whom} to type \`adopt ${person} technician\`.`;
}

function unknownHeater({ lamp, heater, isOther }: Extract<Refusal, { code: 'unknown-lamp' }>, { shop }: Setting): string {
  if (isOther) return `${lamp} is a ${heater === 'pad' ? 'lamp' : 'pad'} here, not a ${heater}. Nothing stored.`;
  const named = heater === 'pad' ? shop.pads : shop.lamps;
  return named.length === 0 ? `No ${heater} ${lamp} here: no ${heater}s are written down for this shop. Leave the name out.` : `No ${heater} ${lamp} here. This shop has: ${named.join(', ')}.`;
}
