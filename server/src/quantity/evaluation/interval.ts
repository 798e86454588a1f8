/** Interval arithmetic: the smallest range that holds every result, for operands anywhere in theirs. */

export interface Interval {
  readonly low: number;
  readonly high: number;
}

export const ANYTHING: Interval = { low: -Infinity, high: Infinity };
export const ZERO: Interval = { low: 0, high: 0 };

export function at(value: number): Interval {
  return { low: value, high: value };
}

export function holdsZero({ low, high }: Interval): boolean {
  return low <= 0 && high >= 0;
}

export function isBounded({ low, high }: Interval): boolean {
  return Number.isFinite(low) && Number.isFinite(high);
}

export function width({ low, high }: Interval): number {
  return high - low;
}

export function middle({ low, high }: Interval): number {
  return low === high ? low : low + (high - low) / 2;
}

export function hull(values: readonly number[]): Interval {
  return { low: Math.min(...values), high: Math.max(...values) };
}

/** The same for four values, without a list of them: it is asked for at every operation. */
function hull4(a: number, b: number, c: number, d: number): Interval {
  return { low: Math.min(a, b, c, d), high: Math.max(a, b, c, d) };
}

/** What both hold; `a` where rounding has left nothing common. */
export function meet(a: Interval, b: Interval): Interval {
  const low = Math.max(a.low, b.low);
  const high = Math.min(a.high, b.high);
  return low <= high ? { low, high } : a;
}

export function add(a: Interval, b: Interval): Interval {
  const low = a.low + b.low;
  const high = a.high + b.high;
  // Of infinities with opposite signs nothing is known.
  return {
    low: Number.isNaN(low) ? -Infinity : low,
    high: Number.isNaN(high) ? Infinity : high,
  };
}

export function subtract(a: Interval, b: Interval): Interval {
  return { low: a.low - b.high, high: a.high - b.low };
}

export function negate({ low, high }: Interval): Interval {
  return { low: -high, high: -low };
}

export function multiply(a: Interval, b: Interval): Interval {
  return hull4(
    product(a.low, b.low),
    product(a.low, b.high),
    product(a.high, b.low),
    product(a.high, b.high),
  );
}

/** Undefined where the divisor can be zero. */
export function divide(a: Interval, b: Interval): Interval | undefined {
  if (holdsZero(b)) return undefined;
  return hull4(
    quotient(a.low, b.low),
    quotient(a.low, b.high),
    quotient(a.high, b.low),
    quotient(a.high, b.high),
  );
}

/** Divided once: by way of 1/b the last digit would differ from that of the value itself. */
function quotient(a: number, b: number): number {
  return a === 0 || !Number.isFinite(b) ? 0 : a / b;
}

/** Nothing of something without bound is nothing: an operand that is exactly zero has no effect. */
function product(a: number, b: number): number {
  return a === 0 || b === 0 ? 0 : a * b;
}
