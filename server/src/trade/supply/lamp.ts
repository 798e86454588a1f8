/**
 * A filament lamp in series with what is tested: it limits the current. A lamp with electronics in
 * it (energy-saving, LED) does not.
 */

/** What is printed on the lamp: power in W, voltage in V. */
export interface Lamp {
  readonly power: number;
  readonly voltage: number;
}

/** Resistance in Ω of the lamp at full brightness. */
export function hotResistance({ power, voltage }: Lamp): number {
  return power > 0 ? voltage ** 2 / power : Number.NaN;
}

/**
 * Resistance in Ω of the cold lamp, a tenth to a fifteenth of the hot one (makers' figures for
 * tungsten).
 */
export function coldResistance(lamp: Lamp, ratio = 12): number {
  return ratio >= 1 ? hotResistance(lamp) / ratio : Number.NaN;
}

/** The most current in A that flows for long: what the lamp takes when all else is shorted. */
export function limitCurrent({ power, voltage }: Lamp): number {
  return voltage > 0 ? power / voltage : Number.NaN;
}
