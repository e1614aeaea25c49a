import type { JobCommand } from './commands.js';
import { decideAccept, decideAdopt, decideBusy, decideHand, decideHandover, decideTurnAway } from './decide-people.js';
import { decideBegin, decideDone, decideSign, decideTap } from './decide-procedure.js';
import { decideEnter } from './decide-enter.js';
import { decideHold, decideOverride } from './decide-stop.js';
import { decideMove } from './decide-move.js';
import { decideWeld, withFireWatch } from './decide-hot-work.js';
import { reportSmoke } from './decide-smoke.js';
import type { Decision, Situation } from './decision.js';

/** What a command about a whole job, its steps or the people means for the book. */
export function decideJob(command: JobCommand, situation: Situation): Decision {
  switch (command.kind) {
    case 'begin':
      return decideBegin(command, situation);
    case 'done':
      return withFireWatch(command, decideDone(command, situation), situation);
    case 'sign':
      return withFireWatch(command, decideSign(command, situation), situation);
    case 'tap':
      return decideTap(command, situation);
    case 'enter':
      return decideEnter(command, situation);
    case 'hold':
      return decideHold(command, situation);
    case 'override':
      return decideOverride(command, situation);
    case 'weld':
      return decideWeld(command, situation);
    case 'smoke':
      return reportSmoke(command, situation);
    case 'hand':
      return decideHand(command, situation);
    case 'handover':
      return decideHandover(command, situation);
    case 'accept':
      return decideAccept(command, situation);
    case 'busy':
      return decideBusy(command, situation);
    case 'move':
      return decideMove(command, situation);
    case 'adopt':
      return decideAdopt(command, situation);
    case 'turn-away':
      return decideTurnAway(command, situation);
  }
}
