/**
 * Which parts of a sequence are out of height order: the fewest that would have to move.
 *
 * What may stay is the heaviest subsequence in which no unit is more than the tolerance lower than
 * one before it. Only the tallest unit so far matters to those that follow, so the answer is built
 * from left to right for each height that can be the tallest so far.
 */
import { MaxTree } from "./maxTree.ts";

/** Parts of one height that are fitted together. */
export interface Unit {
  /** Body height in mm. */
  readonly height: number;
  /** Number of parts. */
  readonly weight: number;
}

/** Heights are sums of tenths and hundredths of a millimetre; this swallows their rounding. */
const ROUNDING = 1e-6;

/** Whether a part of this height comes too late once one of height `tallest` is in place. */
export function isTooLow(height: number, tallest: number, tolerance: number): boolean {
  return height + tolerance + ROUNDING < tallest;
}

/**
 * Positions of the units that would have to move, fewest parts first of all; of answers that are
 * equally short, the one that keeps the taller parts where they are.
 * `top` is the tallest part (mm) in place before the sequence, -Infinity if there is none.
 */
export function fewestMoves(units: readonly Unit[], top: number, tolerance: number): number[] {
  const moves: number[] = [];
  const free: number[] = [];
  for (const [index, unit] of units.entries()) {
    (isTooLow(unit.height, top, tolerance) ? moves : free).push(index);
  }
  for (const block of tangledBlocks(units, free, tolerance)) {
    moves.push(...movesWithin(units, block, tolerance));
  }
  return moves.sort((a, b) => a - b);
}

/**
 * Runs of the sequence that hold a unit out of order, cut wherever everything behind is high enough
 * for everything before: what is kept on one side then does not matter to the other.
 */
function* tangledBlocks(
  units: readonly Unit[],
  free: readonly number[],
  tolerance: number,
): Generator<readonly number[], void, void> {
  const lowestFrom = new Float64Array(free.length + 1).fill(Number.POSITIVE_INFINITY);
  for (let i = free.length - 1; i >= 0; i--) {
    lowestFrom[i] = Math.min(lowestFrom[i + 1]!, units[free[i]!]!.height);
  }
  let start = 0;
  let tallest = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < free.length; i++) {
    tallest = Math.max(tallest, units[free[i]!]!.height);
    if (isTooLow(lowestFrom[i + 1]!, tallest, tolerance)) continue;
    if (i > start) yield free.slice(start, i + 1);
    start = i + 1;
  }
}

/** A unit that became the tallest so far, and the one that was it before. */
interface Rise {
  readonly place: number;
  readonly before: Rise | undefined;
}

function movesWithin(
  units: readonly Unit[],
  block: readonly number[],
  tolerance: number,
): number[] {
  const heights = [...new Set(block.map((index) => units[index]!.height))].sort((a, b) => a - b);
  const rankOf = new Map(heights.map((height, rank) => [height, rank + 1]));
  // Rank 0 stands for "nothing kept yet"; each rank holds the weight kept with it as the tallest.
  const kept = new MaxTree(heights.length + 1);
  kept.set(0, 0);
  const rises: (Rise | undefined)[] = [];
  for (const [place, index] of block.entries()) {
    const { height, weight } = units[index]!;
    const rank = rankOf.get(height)!;
    kept.add(rank + 1, lastWithin(heights, height, tolerance), weight);
    const lower = kept.largestUpTo(rank - 1);
    if (kept.get(lower) > kept.get(rank)) {
      kept.set(rank, kept.get(lower) + weight);
      rises[rank] = { place, before: rises[lower] };
    } else {
      kept.add(rank, rank, weight);
    }
  }
  return dropped(units, block, rises[kept.largestUpTo(heights.length)], tolerance);
}

/** Rank of the greatest height beside which the given one is not too low. */
function lastWithin(heights: readonly number[], height: number, tolerance: number): number {
  let low = 0;
  let high = heights.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (isTooLow(height, heights[middle]!, tolerance)) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** What the chain of rises leaves out. */
function dropped(
  units: readonly Unit[],
  block: readonly number[],
  last: Rise | undefined,
  tolerance: number,
): number[] {
  const rising = new Set<number>();
  for (let rise = last; rise; rise = rise.before) rising.add(rise.place);
  let tallest = Number.NEGATIVE_INFINITY;
  return block.filter((index, place) => {
    const { height } = units[index]!;
    if (rising.has(place)) {
      tallest = height;
      return false;
    }
    return height > tallest || isTooLow(height, tallest, tolerance);
  });
}
