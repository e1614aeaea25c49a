import type { AirReading } from '../../cure/air.js';
import type { JobCommand } from '../../repair/commands.js';
import type { NewFact, Note } from '../../repair/decision.js';
import type { EntryNo, PersonId } from '../../repair/ids.js';
import type { Job } from '../../repair/job.js';
import type { Outlook } from '../../repair/outlook.js';
import type { Answer } from '../answer.js';
import { composeHotWork, composeOver } from './hot-work.js';
import { composeMoved } from './moved.js';
import { composePeople } from './people.js';
import { composeSmoke } from './smoke.js';
import { composeStep } from './procedure.js';
import type { Setting } from './words.js';

/** One entry about a job or the people that was stored (or changed nothing: `entry` null), and the job after it. */
export interface JobEntered<Command extends JobCommand = JobCommand> {
  readonly command: Command;
  readonly by: PersonId;
  readonly facts: readonly NewFact[];
  readonly notes: readonly Note[];
  readonly entry: EntryNo | null;
  /** The job it was about, as it is now; null: about no job, or about several. */
  readonly job: Job | null;
  readonly outlooks: readonly Outlook[];
  /** The shop's air readings. */
  readonly air: readonly AirReading[];
}

export function composeJobEntry(entered: JobEntered, setting: Setting): Answer {
  const { command } = entered;
  switch (command.kind) {
    case 'done':
    case 'sign':
      return composeOver({ ...entered, command }, setting);
    case 'begin':
    case 'tap':
    case 'enter':
    case 'hold':
    case 'override':
      return composeStep({ ...entered, command }, setting);
    case 'weld':
      return composeHotWork({ ...entered, command }, setting);
    case 'smoke':
      return composeSmoke({ ...entered, command }, setting);
    case 'move':
      return composeMoved({ ...entered, command }, setting);
    case 'hand':
    case 'handover':
    case 'accept':
    case 'busy':
    case 'adopt':
    case 'turn-away':
      return composePeople({ ...entered, command }, setting);
  }
}
