import { minus, minutes, type Instant } from '../cure/units.js';

/** How long the id of a handled message is remembered: far longer than any chat sends one again. */
const KEPT = minutes(24 * 60);

/** What is older than this may be forgotten. */
export const forgottenBefore = (now: Instant): Instant => minus(now, KEPT);
