/** The physical dimension of a quantity: what it is made of, whatever unit it is written in. */

/** Exponents of m, kg, s, A, K, cd and dB, in this order; roots make halves. */
export type Dimension = readonly number[];

const BASES = ["m", "kg", "s", "A", "K", "cd", "dB"] as const;
export type Base = (typeof BASES)[number];

/** Of plain numbers, per cents and angles. */
export const NO_DIMENSION: Dimension = BASES.map(() => 0);

/** `dimension({ kg: 1, m: 2, s: -3 })` is that of power. */
export function dimension(exponents: { readonly [base in Base]?: number }): Dimension {
  return BASES.map((base) => exponents[base] ?? 0);
}

export function sameDimension(a: Dimension, b: Dimension): boolean {
  if (a === b) return true;
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}

export function isPlain(a: Dimension): boolean {
  return sameDimension(a, NO_DIMENSION);
}

/** Dimension of a product; `power` is −1 for a quotient. */
export function multiplied(a: Dimension, b: Dimension, power: 1 | -1 = 1): Dimension {
  return a.map((exponent, i) => exponent + power * b[i]!);
}

export function raised(a: Dimension, power: number): Dimension {
  // No negative zero: it would print and compare strangely.
  return a.map((exponent) => exponent * power || 0);
}

/** The base units it consists of, with their exponents. */
export function basesOf(a: Dimension): readonly { readonly base: Base; readonly power: number }[] {
  return BASES.flatMap((base, i) => (a[i] === 0 ? [] : [{ base, power: a[i]! }]));
}
