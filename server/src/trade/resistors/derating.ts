/** What a resistor stands, and how much less when it is hot. */

/** Temperatures in °C between which the power falls from full to nothing. */
export interface Derating {
  readonly full: number;
  readonly zero: number;
}

/** Metal and carbon film: makers' data sheets, after IEC 60115 (rated dissipation at 70 °C). */
export const FILM: Derating = { full: 70, zero: 155 };

/** Share of the rated power that is left at an ambient temperature in °C. Linear, 1 down to 0. */
export function deratingFactor(ambient: number, { full, zero }: Derating = FILM): number {
  if (!(zero > full)) return Number.NaN;
  return Math.min(1, Math.max(0, (zero - ambient) / (zero - full)));
}

/**
 * The working voltage in V that film resistors of a rated power stand whatever their resistance:
 * makers' data sheets for metal film. Undefined for powers beyond the table.
 */
export function workingVoltage(watts: number): number | undefined {
  return WORKING.find(([limit]) => watts <= limit)?.[1];
}

const WORKING: readonly (readonly [watts: number, volts: number])[] = [
  [0.25, 250],
  [0.5, 300],
  [1, 350],
  [5, 500],
];

/** The voltage in V at which a resistor turns a power into heat: √(P R). */
export function voltageAt(power: number, ohms: number): number {
  return Math.sqrt(power * ohms);
}

/** The current in A at which a resistor turns a power into heat: √(P / R). */
export function currentAt(power: number, ohms: number): number {
  return ohms > 0 ? Math.sqrt(power / ohms) : Number.NaN;
}
