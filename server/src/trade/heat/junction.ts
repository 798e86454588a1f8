/**
 * Heat from a junction to the air, through a chain of thermal resistances. Temperatures in °C,
 * powers in W, thermal resistances in K/W. Source: Tj = Ta + P (Rjc + Rcs + Rsa), as in JESD51 and
 * Rashid, Power Electronics.
 */

/** Thermal resistances from the junction to the air in K/W, in the order the heat takes. */
export type Chain = readonly number[];

/** Temperature of the junction in °C. */
export function junctionTemperature(power: number, ambient: number, chain: Chain): number {
  return ambient + power * total(chain);
}

/** The power in W that brings the junction to its limit. NaN without a thermal resistance. */
export function largestPower(limit: number, ambient: number, chain: Chain): number {
  const resistance = total(chain);
  return resistance > 0 ? (limit - ambient) / resistance : Number.NaN;
}

/**
 * The thermal resistance in K/W that a heat sink may have at most; below zero where no heat sink
 * would do. NaN without power. `chain` is what lies between junction and sink.
 */
export function largestSink(power: number, limit: number, ambient: number, chain: Chain): number {
  return power > 0 ? (limit - ambient) / power - total(chain) : Number.NaN;
}

/**
 * Thermal resistance from junction to case in K/W, from a data sheet's power rating at a case
 * temperature (25 °C as a rule): Rjc = (Tj,max − Tc) / P.
 */
export function resistanceFromRating(power: number, limit: number, caseTemperature = 25): number {
  return power > 0 ? (limit - caseTemperature) / power : Number.NaN;
}

function total(chain: Chain): number {
  return chain.reduce((sum, one) => (one >= 0 ? sum + one : Number.NaN), 0);
}
