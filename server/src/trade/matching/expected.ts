/**
 * What matching a lot costs and brings: how many comparisons, and how far the best sets lie apart on
 * average when readings scatter normally.
 */
import { bestSets } from "./bestSets.ts";

/** Comparisons of each part with each other: n(n − 1)/2. */
export function comparisons(lot: number): number {
  return (lot * (lot - 1)) / 2;
}

export interface ExpectedSpread {
  /** Sum of the spreads of all sets, on average, in standard deviations of the readings. */
  readonly total: number;
  /** The greatest spread among the sets, on average. */
  readonly largest: number;
}

/** Lots tried at most, and what sorting and weighing them may come to: a hover must not wait. */
const MOST_LOTS = 8000;
const MOST_WORK = 4_000_000;
/** Sorting a reading costs as much as weighing it for so many sets. */
const SORTING = 16;

/**
 * Average over many lots drawn from the normal distribution, always the same ones; right to some per cent.
 * Closed forms exist only for few cases. Undefined where the lot does not suffice, or is so large that
 * it would take too long.
 */
export function expectedSpread(
  lot: number,
  sets: number,
  size: number,
): ExpectedSpread | undefined {
  if (sets < 1 || size < 2 || lot < sets * size) return undefined;
  const lots = Math.min(MOST_LOTS, Math.floor(MOST_WORK / (lot * (sets + SORTING))));
  if (lots < 100) return undefined;
  const normal = normalNumbers();
  let total = 0;
  let largest = 0;
  for (let count = 0; count < lots; count++) {
    const readings = Array.from({ length: lot }, normal);
    const best = bestSets(readings, sets, size)!;
    total += best.total;
    largest += Math.max(...best.spreads);
  }
  return { total: total / lots, largest: largest / lots };
}

/**
 * The same sequence of normally distributed numbers each time, after Box and Muller (1958), from
 * a counter that is mixed (SplitMix; Steele, Lea and Flood 2014, with a mix for 32 bits).
 */
function normalNumbers(): () => number {
  let state = 1;
  const uniform = () => {
    state = (state + 0x9e3779b9) | 0;
    let mixed = Math.imul(state ^ (state >>> 16), 0x21f0aaad);
    mixed = Math.imul(mixed ^ (mixed >>> 15), 0x735a2d97);
    return (((mixed ^ (mixed >>> 15)) >>> 0) + 0.5) / 0x1_0000_0000;
  };
  let spare: number | undefined;
  return () => {
    if (spare !== undefined) {
      const kept = spare;
      spare = undefined;
      return kept;
    }
    const radius = Math.sqrt(-2 * Math.log(uniform()));
    const angle = 2 * Math.PI * uniform();
    spare = radius * Math.sin(angle);
    return radius * Math.cos(angle);
  };
}
