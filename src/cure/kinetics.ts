import { GAS_CONSTANT } from './arrhenius.js';
import { celsius, kelvinFromCelsius, minutes, type Celsius, type Minutes } from './units.js';

/** So long at one temperature. */
export interface Stage {
  readonly temperature: Celsius;
  readonly minutes: Minutes;
}

/**
 * A milestone whose minutes follow one Arrhenius line: `minutes` at `temperature`, and exp(energy/R · (1/T − 1/T0))
 * times as many at T. It says what to expect; what is announced comes from printed rows.
 */
export interface KineticLaw extends Stage {
  /** Activation energy, J/mol. */
  readonly energy: number;
}

/** 1/T in 1/K. */
export const inverseOf = (temperature: Celsius): number => 1 / kelvinFromCelsius(temperature);

/** How many times faster a reaction of this activation energy (J/mol) runs at `to` than at `from`. */
export const rateRatio = (energy: number, from: Celsius, to: Celsius): number =>
  Math.exp((energy / GAS_CONSTANT) * (inverseOf(from) - inverseOf(to)));

/** Minutes the milestone takes at a steady temperature. */
export const kineticMinutes = (law: KineticLaw, temperature: Celsius): Minutes =>
  minutes(law.minutes / rateRatio(law.energy, law.temperature, temperature));

/** What these stages earn of the milestone: 1 is just there, more is too long. */
export const stagedShare = (law: KineticLaw, stages: readonly Stage[]): number =>
  stages.reduce((share, stage) => share + stage.minutes / kineticMinutes(law, stage.temperature), 0);

/**
 * The steady temperature at which a reaction gets as far as over these stages (mean kinetic temperature, USP <1160>);
 * `energyOverR` is energy/R in K. Null without a minute of any stage.
 */
export function meanKineticTemperature(stages: readonly Stage[], energyOverR: number): Celsius | null {
  const whole = stages.reduce((sum, stage) => sum + stage.minutes, 0);
  if (whole <= 0) return null;
  const rate = stages.reduce((sum, stage) => sum + (stage.minutes / whole) * Math.exp(-energyOverR * inverseOf(stage.temperature)), 0);
  return celsius(energyOverR / -Math.log(rate) - kelvinFromCelsius(celsius(0)));
}
