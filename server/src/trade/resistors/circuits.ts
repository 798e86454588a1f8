/** Small circuits of resistors, in Ω. */

/** Resistors side by side. An endless resistance counts as none; NaN unless all are above zero. */
export function parallel(ohms: readonly number[]): number {
  const conductance = ohms.reduce((sum, one) => (one > 0 ? sum + 1 / one : Number.NaN), 0);
  return 1 / conductance;
}

/**
 * The resistor in series with light-emitting diodes: (V − Vf) / I. NaN unless the supply is above
 * the forward voltage and the current above zero. Source: Lessons In Electric Circuits (Kuphaldt).
 */
export function ledResistor(supply: number, forward: number, current: number): number {
  return supply > forward && current > 0 ? (supply - forward) / current : Number.NaN;
}
