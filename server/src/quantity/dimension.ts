/** The physical dimension of a quantity: what it is made of, whatever unit it is written in. */

/** Exponents of m, kg, s, A, K, cd and dB, in this order; roots make halves. */
export type Dimension = readonly number[];

const BASES = ["m", "kg", "s", "A", "K", "cd", "dB"] as const;
export type Base = (typeof BASES)[number];

/** More dimensions than these are met in hostile texts only. */
const MAX_KEPT = 1024;

const KEPT = new Map<string, Dimension>();

/** One array for each dimension: guides compute thousands of figures, of few kinds. */
function theOne(exponents: Dimension): Dimension {
  const key = exponents.join();
  const known = KEPT.get(key);
  if (known) return known;
  if (KEPT.size >= MAX_KEPT) KEPT.clear();
  KEPT.set(key, exponents);
  return exponents;
}

/** Of plain numbers, per cents and angles. */
export const NO_DIMENSION = dimension({});

/** `dimension({ kg: 1, m: 2, s: -3 })` is that of power. */
export function dimension(exponents: { readonly [base in Base]?: number }): Dimension {
  return theOne(BASES.map((base) => exponents[base] ?? 0));
}

export function sameDimension(a: Dimension, b: Dimension): boolean {
  if (a === b) return true;
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}

export function isPlain(a: Dimension): boolean {
  return sameDimension(a, NO_DIMENSION);
}

/** What has been multiplied and raised before. */
const PRODUCTS = new WeakMap<Dimension, WeakMap<Dimension, Dimension>>();
const QUOTIENTS = new WeakMap<Dimension, WeakMap<Dimension, Dimension>>();
const SQUARES = new WeakMap<Dimension, Dimension>();

/** Dimension of a product; `power` is −1 for a quotient. */
export function multiplied(a: Dimension, b: Dimension, power: 1 | -1 = 1): Dimension {
  const ofA = kept(power === 1 ? PRODUCTS : QUOTIENTS, a, () => new WeakMap());
  return kept(ofA, b, () => theOne(a.map((exponent, i) => exponent + power * b[i]!)));
}

export function raised(a: Dimension, power: number): Dimension {
  // No negative zero: it would print and compare strangely.
  const compute = () => theOne(a.map((exponent) => exponent * power || 0));
  return power === 2 ? kept(SQUARES, a, compute) : compute();
}

function kept<Key extends object, Result>(
  store: WeakMap<Key, Result>,
  key: Key,
  make: () => Result,
): Result {
  const known = store.get(key);
  if (known !== undefined) return known;
  const made = make();
  store.set(key, made);
  return made;
}

/** The base units it consists of, with their exponents. */
export function basesOf(a: Dimension): readonly { readonly base: Base; readonly power: number }[] {
  return BASES.flatMap((base, i) => (a[i] === 0 ? [] : [{ base, power: a[i]! }]));
}
