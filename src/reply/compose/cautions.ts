import type { CautionKind } from '../../repair/procedure.js';
import { sayCautions } from '../catalogue/cautions.js';
import type { Reader } from '../catalogue/speaker.js';

/** One caution in the reader's language; what each rests on stands beside the English. */
export const cautionLine = (kind: CautionKind, reader: Reader): string => sayCautions(reader, kind);
