/**
 * Power in a class B output stage with a sine wave, between two equal supplies of ± `rail` volts and
 * a resistive load. Powers in W. Source: Boylestad and Nashelsky, Electronic Devices and Circuit
 * Theory, power amplifiers.
 */

/** Output in W at a peak voltage across the load. */
export function outputPower(peak: number, load: number): number {
  return load > 0 ? peak ** 2 / (2 * load) : Number.NaN;
}

/** What both supplies deliver together in W at a peak voltage across the load. */
export function inputPower(rail: number, load: number, peak: number): number {
  return load > 0 && peak <= rail ? (2 * rail * peak) / (Math.PI * load) : Number.NaN;
}

/** Heat in W of both devices together at a peak voltage across the load. */
export function dissipation(rail: number, load: number, peak: number): number {
  return inputPower(rail, load, peak) - outputPower(peak, load);
}

/** The most heat in W of both devices together; it comes at a peak of 2/π of the rail. */
export function worstDissipation(rail: number, load: number): number {
  return load > 0 ? (2 * rail ** 2) / (Math.PI ** 2 * load) : Number.NaN;
}

/** Share of the input that reaches the load: at most π/4. */
export function efficiency(rail: number, peak: number): number {
  return rail > 0 && peak <= rail ? (Math.PI / 4) * (peak / rail) : Number.NaN;
}
