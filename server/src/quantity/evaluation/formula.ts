/**
 * A trade function as an operation. All that is known of it is its result at a point and which way
 * each parameter moves it; over a parameter that moves it either way it is sampled and the best
 * samples are improved.
 */
import type { FormulaFunction } from "../functions.ts";
import { ANYTHING, type Interval } from "./interval.ts";
import type { Operation } from "./operations.ts";

/** Samples along one parameter, and steps that improve the best of them. */
const SAMPLES = 64;
const STEPS = 40;

/** `words` holds the text of each word argument in its place; the others come as operands. */
export function formula(fn: FormulaFunction, words: readonly (string | undefined)[]): Operation {
  const trends = fn.parameters.filter((_, i) => words[i] === undefined).map((one) => one.trend);
  const value = (...numbers: readonly number[]) => fn.compute(fill(words, numbers));
  return {
    value,
    range(...ranges) {
      const ends = ([1, -1] as const).map(
        (sign) => sign * extreme((point) => sign * value(...point), ranges, trends, sign),
      );
      const [high, low] = ends as [number, number];
      return Number.isNaN(high) || Number.isNaN(low) ? undefined : { low, high };
    },
    slopes: () => trends.map((trend) => SLOPES[trend]),
  };
}

type Trend = FormulaFunction["parameters"][number]["trend"];

const SLOPES: { readonly [trend in Trend]: Interval } = {
  rises: { low: 0, high: Infinity },
  falls: { low: -Infinity, high: 0 },
  either: ANYTHING,
};

/** Word arguments and numbers in the order of the parameters. */
export function fill(
  words: readonly (string | undefined)[],
  numbers: readonly number[],
): (number | string)[] {
  let next = 0;
  return words.map((word) => word ?? numbers[next++]!);
}

/** Greatest value of `of`; `sign` tells whether `of` is the function or its negative. */
function extreme(
  of: (point: readonly number[]) => number,
  ranges: readonly Interval[],
  trends: readonly Trend[],
  sign: 1 | -1,
): number {
  const point = ranges.map(({ low, high }, i) =>
    (trends[i] === "rises") === (sign === 1) ? high : low,
  );
  let best = of(point);
  for (const [i, range] of ranges.entries()) {
    if (trends[i] !== "either" || range.low === range.high) continue;
    const along = (x: number) => of(point.map((one, j) => (i === j ? x : one)));
    const found = best1(along, range);
    point[i] = found.at;
    best = Math.max(best, found.value);
  }
  return best;
}

interface Sample {
  readonly at: number;
  readonly value: number;
}

/** Samples the range, then closes in on the best sample from both sides. */
function best1(of: (x: number) => number, { low, high }: Interval): Sample {
  const step = (high - low) / SAMPLES;
  let best: Sample = { at: low, value: of(low) };
  for (let i = 1; i <= SAMPLES; i++) {
    const x = i === SAMPLES ? high : low + i * step;
    const value = of(x);
    if (Number.isNaN(value)) return { at: x, value };
    if (value > best.value) best = { at: x, value };
  }
  let reach = step;
  for (let i = 0; i < STEPS; i++) {
    reach /= 2;
    for (const x of [best.at - reach, best.at + reach]) {
      if (x < low || x > high) continue;
      const value = of(x);
      if (value > best.value) best = { at: x, value };
    }
  }
  return best;
}
