import { z } from 'zod';
import { expects } from '../cure/closed-object.js';

const BAY = /^[A-Za-z0-9][A-Za-z0-9-]{0,9}$/;

/** Where cars stand: by number or by a short name. */
export const baysField = z
  .array(
    z.union([z.string(), z.number()], { error: expects('a number or a short name such as 3 or paint') })
      .transform((name) => String(name).trim())
      .refine((name) => BAY.test(name), { error: 'must be a number or at most ten letters and digits' }),
    { error: expects('a list of bays such as [1, 2]') },
  )
  .superRefine((names, context) => {
    for (const [index, name] of names.entries()) {
      if (names.findIndex((other) => other.toLowerCase() === name.toLowerCase()) < index) context.addIssue({ code: 'custom', path: [index], message: `${name} stands in the list already` });
    }
  });
