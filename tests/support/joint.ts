import type { AirStep } from '../../src/cure/air.js';
import type { Heater, HeatEvent, JointHistory, JointStep } from '../../src/cure/history.js';
import type { MaterialCard, MilestoneKind, SheetRow } from '../../src/cure/card.js';
import { vapourPressure } from '../../src/cure/dew-point.js';
import { forecast } from '../../src/cure/forecast.js';
import { celsius, instant, minutes, type Instant } from '../../src/cure/units.js';

const DAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];
const MONDAY = Date.UTC(2026, 2, 2);
const TIME = /^(?:([A-Z][a-z]{2}) )?(\d{1,2}):(\d{2})(?::(\d{2}))?$/;
const DAY = 86_400_000;

/** `Tue 09:25` or `11:30:08` (then Monday): a moment of the week of 2 March 2026, when London keeps UTC. */
export function on(text: string): Instant {
  const [, day = 'Mon', hours, minute, seconds = '0'] = TIME.exec(text) ?? [];
  const index = DAYS.indexOf(day);
  if (hours === undefined || minute === undefined || index < 0) throw new Error(`not a time: ${text}`);
  return instant(MONDAY + index * DAY + Number(hours) * 3_600_000 + Number(minute) * 60_000 + Number(seconds) * 1000);
}

/** The same notation back; the day is left out on Monday, whole minutes have no seconds. */
export function said(at: Instant | null): string {
  if (at === null) return 'never';
  const iso = new Date(at).toISOString();
  const day = DAYS[Math.floor((at - MONDAY) / DAY)] ?? iso.slice(0, 10);
  const time = iso.slice(11, at % 60_000 === 0 ? 16 : 19);
  return day === 'Mon' ? time : `${day} ${time}`;
}

export const rows = (figures: Readonly<Record<number, number>>): SheetRow[] =>
  Object.entries(figures).map(([temperature, length]) => ({ temperature: celsius(Number(temperature)), minutes: minutes(length) }));

/** Air as read at its own temperature. */
export const airStep = (from: Instant, temperature: number | null, humidity: number | null = null): AirStep => ({
  from,
  temperature: temperature === null ? null : celsius(temperature),
  humidity,
  vapour: temperature === null || humidity === null ? null : vapourPressure(celsius(temperature), humidity),
  source: 'air reading',
});

/** Air that never changes. */
export const steadyAir = (from: Instant, temperature: number | null, humidity: number | null = null): AirStep[] => [
  airStep(from, temperature, humidity),
];

const heatSet = (heater: Heater) => (at: string, setting: number): HeatEvent => ({ kind: 'lamp-set', at: on(at), setting: celsius(setting), heater });
export const lampSet = heatSet('lamp');
export const padSet = heatSet('pad');
export const lampOn = (at: string): HeatEvent => ({ kind: 'lamp-on', at: on(at) });
export const lampOff = (at: string): HeatEvent => ({ kind: 'lamp-off', at: on(at) });
export const foundOff = (at: string): HeatEvent => ({ kind: 'lamp-found-off', at: on(at) });
export const closing = (at: string): HeatEvent => ({ kind: 'closing', at: on(at) });
export const read = (at: string, value: number): HeatEvent => ({ kind: 'reading', at: on(at), value: celsius(value) });

/** One joint closed at `start`; air 20 °C and a depth that nobody said if nothing else is said. */
export const joint = (start: string, heat: readonly HeatEvent[] = [], air: readonly AirStep[] = steadyAir(on(start), 20), depthMillimetres: number | null = null): JointHistory => ({ start: on(start), heat, air, depthMillimetres });

/** Due times of a card on a joint, as people read them. */
export const dueTimes = (card: MaterialCard, history: JointHistory): Partial<Record<MilestoneKind, string>> =>
  Object.fromEntries(forecast(card, history).map((one) => [one.kind, said(one.dueAt)]));

/** `09:25 30 reading` for every step. */
export const words = (steps: readonly (JointStep | AirStep)[]): string[] => steps.map((step) => `${said(step.from)} ${step.temperature ?? 'nothing'} ${step.source}`);
