import { minus, minutes, type Instant } from '../cure/units.js';

/** How long the id of a handled message is remembered: far longer than any chat sends one again. */
const KEPT = minutes(24 * 60);

/** How long an answer's buttons are looked after, and who looks at a home tab: nobody scrolls back further. */
const FORTNIGHT = minutes(14 * 24 * 60);

export const fortnightBefore = (now: Instant): Instant => minus(now, FORTNIGHT);

/** What is older than this may be forgotten. */
export const forgottenBefore = (now: Instant): Instant => minus(now, KEPT);
