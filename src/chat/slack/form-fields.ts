/** Names of the form's blocks; each holds one element of the same name. */
export const FIELDS = ['job', 'joint', 'card', 'depth', 'heat', 'setting', 'when', 'time'] as const;
export type Field = (typeof FIELDS)[number];

/** What stands in the form; a field that is empty or not shown is null. */
export type FormValues = Readonly<Record<Field, string | null>>;

/** A sentence under a field, for whoever filled it in. */
export type FieldErrors = Readonly<Partial<Record<Field, string>>>;

/** Minutes ago, as offered; 0 is now. */
export const WHEN_OFFERED: readonly number[] = [0, 5, 15, 30];

/** The heat of the form: `air`, or a heater with or without a name, `lamp A`, `pad M1`, `lamp`. */
export const AIR = 'air';

export const FORM_CALLBACK = 'start-cure';
