/** The wire of a winding: its length and its resistance. Metre, ohm, °C. */

/** Resistivity of annealed copper at 20 °C in Ω·m. Source: IEC 60028. */
const COPPER = 1e-6 / 58;
/** Its change with temperature per kelvin, from 20 °C. Source: IEC 60287-1-1. */
const COPPER_RISE = 3.93e-3;

/**
 * Wire in m for turns of a mean diameter, and leads on top: n π d + leads. The slant of the turns
 * of a close winding adds well below 1 %.
 */
export function windingLength(turns: number, diameter: number, leads = 0): number {
  return turns >= 0 && diameter > 0 && leads >= 0 ? turns * Math.PI * diameter + leads : Number.NaN;
}

/** Length in m of a close winding: turns side by side. */
export function woundLength(turns: number, wire: number): number {
  return turns >= 0 && wire > 0 ? turns * wire : Number.NaN;
}

/** D.c. resistance in Ω of a copper wire of a length and bare diameter, at a temperature in °C. */
export function copperResistance(length: number, diameter: number, temperature = 20): number {
  if (!(length >= 0 && diameter > 0)) return Number.NaN;
  const cold = (COPPER * length) / ((Math.PI / 4) * diameter ** 2);
  return cold * (1 + COPPER_RISE * (temperature - 20));
}
