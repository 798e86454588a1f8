/** Inductance of a single-layer air-core coil. Lengths in metres, results in henry. */

/** Magnetic constant, H/m. */
const MU_0 = 4e-7 * Math.PI;
const INCH = 0.0254;

/** What a coil's inductance depends on. */
export interface Coil {
  readonly turns: number;
  /** Mean diameter of a turn in m: former and one wire. */
  readonly diameter: number;
  /** Length of the winding in m, from the middle of the first turn to that of the last. */
  readonly length: number;
}

/**
 * Inductance in H after Lorenz and Nagaoka: exact for a thin cylindrical current sheet, and within
 * about 1 % of a real close winding of round wire. NaN unless all figures are above zero.
 * Source: H. Nagaoka, Journal of the College of Science, Tokyo, 27 (1909), article 6.
 */
export function inductance({ turns, diameter, length }: Coil): number {
  if (!(turns > 0 && diameter > 0 && length > 0)) return Number.NaN;
  const area = (Math.PI / 4) * diameter ** 2;
  return (MU_0 * area * turns ** 2 * nagaoka(diameter / length)) / length;
}

/**
 * The same by Wheeler's approximation: within 1 % where the coil is at least 0.4 times as long as
 * wide, low for shorter ones. Source: H. A. Wheeler, Proceedings of the IRE 16 (1928).
 */
export function wheelerInductance({ turns, diameter, length }: Coil): number {
  if (!(turns > 0 && diameter > 0 && length > 0)) return Number.NaN;
  const [d, l] = [diameter / INCH, length / INCH];
  return (1e-6 * (d * turns) ** 2) / (18 * d + 40 * l);
}

/** Turns of a coil of that size for an inductance in H; NaN unless all figures are above zero. */
export function turnsFor(henry: number, diameter: number, length: number): number {
  return henry > 0 ? Math.sqrt(henry / inductance({ turns: 1, diameter, length })) : Number.NaN;
}

/**
 * Nagaoka's coefficient of a coil whose diameter is `ratio` times its length (0 and above): 1 for an
 * endless coil, and falling. Relative error below 1e-9 up to a ratio of 1000.
 */
export function nagaoka(ratio: number): number {
  if (!(ratio >= 0)) return Number.NaN;
  // Below, the elliptic integrals would be divided by a modulus of nought.
  if (ratio < 1e-6) return 1 - (4 * ratio) / (3 * Math.PI);
  const k2 = ratio ** 2 / (1 + ratio ** 2);
  const complement = 1 / Math.sqrt(1 + ratio ** 2);
  const { second, difference } = ellipticIntegrals(Math.sqrt(k2), complement);
  const bracket = (complement ** 2 / k2) * difference + second - Math.sqrt(k2);
  return (4 / (3 * Math.PI * complement)) * bracket;
}

/**
 * The complete elliptic integral of the second kind, and how much that of the first is larger, by
 * the arithmetic-geometric mean (Abramowitz and Stegun, 17.6).
 */
function ellipticIntegrals(modulus: number, complement: number) {
  let [a, b, c] = [1, complement, modulus];
  let sum = c ** 2 / 2;
  for (let weight = 1; Math.abs(c) > 1e-17 && weight < 2 ** 12; weight *= 2) {
    [a, b, c] = [(a + b) / 2, Math.sqrt(a * b), (a - b) / 2];
    sum += weight * c ** 2;
  }
  const first = Math.PI / (2 * a);
  return { second: first * (1 - sum), difference: first * sum };
}
