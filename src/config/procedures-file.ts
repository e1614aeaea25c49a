import type { Procedure } from '../repair/procedure.js';
import { procedureSchema } from '../repair/procedure-schema.js';
import type { FileProblem } from './file-problem.js';
import { readYamlFolder } from './yaml-folder.js';

export type ProceduresRead = { readonly ok: true; readonly procedures: readonly Procedure[] } | { readonly ok: false; readonly problems: readonly FileProblem[] };

/** Reads every `*.yaml` of a folder as a procedure: all of them or none. Procedures come sorted by name. */
export function readProcedures(folder: string): ProceduresRead {
  const read = readYamlFolder(folder, { called: 'procedure', nameKey: 'procedure', schema: procedureSchema });
  return read.ok ? { ok: true, procedures: read.things } : read;
}
