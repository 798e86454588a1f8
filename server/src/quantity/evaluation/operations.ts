/**
 * The operations that expressions are made of: each knows its value, the range of its results for
 * ranges of its operands, and its slopes, which tell in which direction each operand moves it.
 */
import {
  ANYTHING,
  add,
  at,
  divide,
  hull,
  type Interval,
  multiply,
  negate,
  subtract,
  ZERO,
} from "./interval.ts";

export interface Operation {
  /** Whether `range` is the smallest there is, for operands that have no input in common. */
  readonly exact?: true;
  value(...args: readonly number[]): number;
  /** Encloses all results; undefined where the operation has no meaning for some operands. */
  range(...args: readonly Interval[]): Interval | undefined;
  /** Encloses the derivative by each operand, for operands in these ranges. */
  slopes(...args: readonly Interval[]): readonly Interval[];
}

const ONE = at(1);
const MINUS_ONE = at(-1);

export const SUM: Operation = {
  exact: true,
  value: (a, b) => a! + b!,
  range: (a, b) => add(a!, b!),
  slopes: () => [ONE, ONE],
};

export const DIFFERENCE: Operation = {
  exact: true,
  value: (a, b) => a! - b!,
  range: (a, b) => subtract(a!, b!),
  slopes: () => [ONE, MINUS_ONE],
};

export const NEGATION: Operation = {
  exact: true,
  value: (a) => -a!,
  range: (a) => negate(a!),
  slopes: () => [MINUS_ONE],
};

export const PRODUCT: Operation = {
  exact: true,
  value: (a, b) => a! * b!,
  range: (a, b) => multiply(a!, b!),
  slopes: (a, b) => [b!, a!],
};

export const QUOTIENT: Operation = {
  exact: true,
  value: (a, b) => a! / b!,
  range: (a, b) => divide(a!, b!),
  slopes: (a, b) => {
    const by = divide(ONE, b!) ?? ANYTHING;
    return [by, negate(multiply(a!, multiply(by, by)))];
  },
};

/** Resistances side by side: a·b/(a + b). */
export const PARALLEL: Operation = {
  value: (a, b) => (a === 0 && b === 0 ? 0 : (a! * b!) / (a! + b!)),
  range: (a, b) => {
    if (a!.low >= 0 && b!.low >= 0) {
      // Rounding may leave the value of the greater ends a digit below that of the smaller.
      return hull([PARALLEL.value(a!.low, b!.low), PARALLEL.value(a!.high, b!.high)]);
    }
    return divide(multiply(a!, b!), add(a!, b!));
  },
  slopes: (a, b) => {
    const sum = add(a!, b!);
    return [b!, a!].map((other) => square(divide(other, sum) ?? ANYTHING));
  },
};

const WHOLE_POWERS = new Map<number, Operation>();

/** A whole power, the exponent known beforehand: from −100 to 100. */
export function wholePower(exponent: number): Operation {
  const known = WHOLE_POWERS.get(exponent) ?? makeWholePower(exponent);
  WHOLE_POWERS.set(exponent, known);
  return known;
}

function makeWholePower(exponent: number): Operation {
  const range = (a: Interval) => rangeOfPower(a, exponent);
  return {
    // A negative one divides by the power, which rounds otherwise than the value.
    ...(exponent >= 0 && { exact: true }),
    value: (a) => a! ** exponent,
    range: (a) => range(a!),
    slopes: (a) => [multiply(at(exponent), rangeOfPower(a!, exponent - 1) ?? ANYTHING)],
  };
}

function rangeOfPower(a: Interval, exponent: number): Interval | undefined {
  if (exponent === 0) return ONE;
  if (exponent < 0) return divide(ONE, rangeOfPower(a, -exponent)!);
  const ends = hull([a.low ** exponent, a.high ** exponent]);
  const dips = exponent % 2 === 0 && a.low < 0 && a.high > 0;
  return dips ? { low: 0, high: ends.high } : ends;
}

function square(a: Interval): Interval {
  return rangeOfPower(a, 2)!;
}

/** Any power of what is not below zero. */
export const POWER: Operation = {
  value: (a, b) => a! ** b!,
  range: (a, b) => {
    if (a!.low < 0 || (a!.low === 0 && b!.low <= 0)) return undefined;
    return corners(a!, b!, (x, y) => x ** y);
  },
  slopes: (a, b) => {
    if (a!.low <= 0) return [ANYTHING, ANYTHING];
    const result = corners(a!, b!, (x, y) => x ** y);
    return [
      multiply(
        b!,
        corners(a!, b!, (x, y) => x ** (y - 1)),
      ),
      multiply(result, { low: Math.log(a!.low), high: Math.log(a!.high) }),
    ];
  },
};

/** Range of what moves one way in each operand, whatever the other is. */
function corners(a: Interval, b: Interval, of: (x: number, y: number) => number): Interval {
  return hull([of(a.low, b.low), of(a.low, b.high), of(a.high, b.low), of(a.high, b.high)]);
}

export const ROOT: Operation = {
  exact: true,
  value: (a) => Math.sqrt(a!),
  range: (a) => (a!.low < 0 ? undefined : { low: Math.sqrt(a!.low), high: Math.sqrt(a!.high) }),
  slopes: (a) => [
    { low: 0.5 / Math.sqrt(a!.high), high: a!.low > 0 ? 0.5 / Math.sqrt(a!.low) : Infinity },
  ],
};

export const LOGARITHM: Operation = {
  exact: true,
  value: (a) => Math.log(a!),
  range: (a) => (a!.low <= 0 ? undefined : { low: Math.log(a!.low), high: Math.log(a!.high) }),
  slopes: (a) => [a!.low > 0 ? { low: 1 / a!.high, high: 1 / a!.low } : ANYTHING],
};

export const EXPONENTIAL: Operation = {
  value: (a) => Math.exp(a!),
  range: (a) => ({ low: Math.exp(a!.low), high: Math.exp(a!.high) }),
  slopes: (a) => [{ low: Math.exp(a!.low), high: Math.exp(a!.high) }],
};

export const MAGNITUDE: Operation = {
  value: (a) => Math.abs(a!),
  range: (a) => {
    const ends = hull([Math.abs(a!.low), Math.abs(a!.high)]);
    return a!.low < 0 && a!.high > 0 ? { low: 0, high: ends.high } : ends;
  },
  slopes: (a) => [a!.low >= 0 ? ONE : a!.high <= 0 ? MINUS_ONE : { low: -1, high: 1 }],
};

export const LEAST: Operation = {
  value: (a, b) => Math.min(a!, b!),
  range: (a, b) => ({ low: Math.min(a!.low, b!.low), high: Math.min(a!.high, b!.high) }),
  slopes: (a, b) => [share(a!, b!), share(b!, a!)],
};

export const GREATEST: Operation = {
  value: (a, b) => Math.max(a!, b!),
  range: (a, b) => ({ low: Math.max(a!.low, b!.low), high: Math.max(a!.high, b!.high) }),
  slopes: (a, b) => [share(negate(a!), negate(b!)), share(negate(b!), negate(a!))],
};

/** How far the lesser of two follows the first of them. */
function share(a: Interval, b: Interval): Interval {
  if (a.high < b.low) return ONE;
  return a.low > b.high ? ZERO : { low: 0, high: 1 };
}

export const SINE: Operation = {
  value: (a) => Math.sin(a!),
  range: (a) => rangeOfSine(a!),
  slopes: (a) => [rangeOfSine(quarterOn(a!))],
};

export const COSINE: Operation = {
  value: (a) => Math.cos(a!),
  range: (a) => rangeOfSine(quarterOn(a!)),
  slopes: (a) => [negate(rangeOfSine(a!))],
};

function quarterOn(a: Interval): Interval {
  return add(a, at(Math.PI / 2));
}

function rangeOfSine(a: Interval): Interval {
  const ends = hull([Math.sin(a.low), Math.sin(a.high)]);
  return {
    low: holdsAngle(a, -Math.PI / 2) ? -1 : ends.low,
    high: holdsAngle(a, Math.PI / 2) ? 1 : ends.high,
  };
}

/** Whether the angle, or one a whole number of turns on, lies in the range. */
function holdsAngle({ low, high }: Interval, angle: number): boolean {
  const turn = 2 * Math.PI;
  return Math.ceil((low - angle) / turn) * turn + angle <= high;
}
