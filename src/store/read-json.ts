import { z } from 'zod';

/** Parses one JSON column. A text that does not fit says where it stands and what is wrong with it. */
export function readJson<S extends z.ZodType>(schema: S, text: string, where: string): z.output<S> {
  const result = schema.safeParse(parsed(text, where));
  if (result.success) return result.data;
  throw new Error(`${where} in the book cannot be read: ${z.prettifyError(result.error)}`, { cause: result.error });
}

function parsed(text: string, where: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    throw new Error(`${where} in the book is not valid JSON.`, { cause: error });
  }
}
