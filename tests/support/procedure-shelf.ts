import { readConfig } from '../../src/config.js';
import { readProcedures } from '../../src/config/procedures-file.js';
import type { Procedure, ProcedureStep } from '../../src/repair/procedure.js';

/** The example procedures that come with the program. Their orders and figures are our own inventions. */
export const PROCEDURES: readonly Procedure[] = shipped();

export function procedureNamed(name: string): Procedure {
  const found = PROCEDURES.find((procedure) => procedure.name === name);
  if (found === undefined) throw new Error(`There is no example procedure ${name}.`);
  return found;
}

export function stepNamed(procedure: Procedure, id: string): ProcedureStep {
  const found = procedure.steps.find((step) => step.id === id);
  if (found === undefined) throw new Error(`${procedure.name} has no step ${id}.`);
  return found;
}

function shipped(): readonly Procedure[] {
  const config = readConfig({});
  if (!config.ok) throw new Error(config.problems.join('\n'));
  const read = readProcedures(config.config.procedures.path);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.procedures;
}
