/** The reservoir capacitor behind a full-wave rectifier. Volt, ampere, farad, hertz. */

/**
 * Ripple in V from peak to peak: I / (2 f C), f the mains frequency. An upper bound: it takes the
 * capacitor to be discharged for the whole half period. Source: Malvino and Bates, Electronic
 * Principles.
 */
export function rippleVoltage(current: number, farads: number, mains: number): number {
  return farads > 0 && mains > 0 ? current / (2 * mains * farads) : Number.NaN;
}

/**
 * Voltage in V of the reservoir without load: √2 × V (1 + regulation) (1 + mains tolerance), less
 * the drop of the diodes in the path. Regulation and tolerance as shares: 0.1 is 10 %.
 */
export function peakVoltage(
  secondary: number,
  regulation: number,
  tolerance: number,
  drop: number,
): number {
  return Math.SQRT2 * secondary * (1 + regulation) * (1 + tolerance) - drop;
}
