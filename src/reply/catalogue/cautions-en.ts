/** One line each, in our own words; a reminder, never permission. Common practice, no source, unless a comment names one. */
export const CAUTIONS_EN = {
  'before-work': 'Battery, airbags, high voltage: made dead by somebody qualified? If not known, ask the foreman.',
  solvent: 'Vapour: door open, no lamp and no spark until it is dry. Rags into the lidded bin.',
  paste: 'Gloves, eyes.',
  clamps: 'Eyes. Fingers out of the clamp line.',
  'weld-wet': 'Only where the repair method says so. Extraction and mask; cavity, trim, fuel and wax clear; a second person with an extinguisher.',
  'weld-after': "Heat travels a hand's width: short spots, cool between, stop if it smells. A second person with an extinguisher.",
  // NFPA 51B (2019) asks for 60 minutes; 29 CFR 1910.252(a)(2)(iii)(B) for 30 at the least. The shop's own rule counts.
  'fire-watch': 'Somebody stays and looks: the far side, the cavity, the trim. Extinguisher at hand.',
  // Materials that hold isocyanates release them under infrared heat: DGUV Information 214-020, section 7.4.
  lamp: 'Never leave a lamp or pad alone. Nothing wet with solvent near it, no tyre, glass edge or high-voltage part.',
  battery: 'Hot enough for a battery: high-voltage parts made dead, and shielded or out, per the vehicle maker? Never leave the heat alone.',
  reading: 'Probe, not finger, at the coldest spot. Bare shiny metal lies to infrared.',
  'clamps-off': 'Clamps off one at a time, if the repair method agrees; stop if the gap moves.',
  // Respirable dust: 29 CFR 1910.1053 for crystalline silica.
  sanding: 'Mask and extraction. Aluminium dust and steel sparks never in one extractor.',
  filler: 'Peroxide hardener: eyes. More of it is no faster.',
  // Training before use: EU 2020/1149 (REACH Annex XVII, entry 74).
  isocyanate: 'Air-fed mask per your local rule; a paper mask is not enough.',
  bake: 'Batteries, gas struts, aerosol cans out? The lowest limit of every material in this car counts.',
  wax: '**From now on no welding and no bake on this car**: the mist burns.',
  glass: 'No slamming, a window ajar, tape stays, the car stands.',
} as const;
