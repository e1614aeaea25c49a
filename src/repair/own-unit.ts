import type { AirSaid, Command, TypedTemperature } from './commands.js';
import type { Situation } from './decision.js';

/** A figure without a unit is in its speaker's own, where shop.yaml says that they use another than the shop. Written down with it, a button means the same to whoever taps it. */
export function inOwnUnit(command: Command, { shop, by }: Pick<Situation, 'shop' | 'by'>): Command {
  const own = shop.people.find(({ id }) => id === by)?.unit ?? shop.unit;
  if (own === shop.unit) return command;
  const said = (typed: TypedTemperature): TypedTemperature => (typed.unit === null ? { ...typed, unit: own } : typed);
  const along = (air: AirSaid | undefined): { readonly air?: AirSaid } => (air === undefined ? {} : { air: { ...air, value: said(air.value) } });
  switch (command.kind) {
    case 'paste':
    case 'closed':
      return { ...command, ...along(command.air) };
    case 'cure':
      return { ...command, setting: command.setting === null ? null : said(command.setting), ...along(command.air) };
    case 'lamp':
      return { ...command, setting: command.setting === null ? null : said(command.setting) };
    case 'read':
    case 'air':
      return { ...command, value: said(command.value) };
    case 'what-if':
      return { ...command, setting: command.setting === null ? null : said(command.setting), air: command.air === null ? null : said(command.air) };
    default:
      return command;
  }
}
