/**
 * Bending the leads of parts. Lengths in m. Source: NASA and IPC workmanship tables as taught in
 * soldering courses; for glass diodes, a diode maker's mounting notes.
 */

/** Inner radius of a bend in diameters of the lead: below 0.8 mm 1, up to 1.2 mm 1.5, above 2. */
export function bendRadius(diameter: number): number {
  if (!(diameter > 0)) return Number.NaN;
  if (diameter < 0.8e-3) return diameter;
  return (diameter <= 1.2e-3 ? 1.5 : 2) * diameter;
}

/** Straight lead between body (or seal) and bend: one diameter, and 0.8 mm at least. */
export function bendDistance(diameter: number): number {
  return diameter > 0 ? Math.max(diameter, 0.8e-3) : Number.NaN;
}

/** The same for glass diodes, whose bodies crack: three diameters, and 3.2 mm (1/8 in) at least. */
export function glassBendDistance(diameter: number): number {
  return diameter > 0 ? Math.max(3 * diameter, 3.2e-3) : Number.NaN;
}

/** The least distance of the two holes of a lying part with a body of that length. */
export function leastHoleSpacing(body: number, diameter: number): number {
  if (!(body >= 0)) return Number.NaN;
  return body + 2 * (bendDistance(diameter) + bendRadius(diameter) + diameter / 2);
}
