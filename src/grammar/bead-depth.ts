/** What a bead can have, in millimetres; outside it is a typing error. */
export const SHALLOWEST_BEAD = 0.5;
export const DEEPEST_BEAD = 50;

export const isBeadDepth = (millimetres: number): boolean => millimetres >= SHALLOWEST_BEAD && millimetres <= DEEPEST_BEAD;
