/**
 * Picks matched sets from a lot: the choice with the least total spread, exactly.
 *
 * The spread of a set is its greatest less its least reading. Of two sets whose ranges overlap, the
 * lower half of their members and the upper half spread no more in all; so some best choice has sets
 * of neighbours in the sorted lot, and dynamic programming over the sorted readings finds it (the
 * known method for choosing pairs, here for sets of any size). Time grows with lot × sets.
 */

export interface MatchedSets {
  /** Places in the lot, from 0; within a set by reading. Sets stand in the order of their readings. */
  readonly sets: readonly (readonly number[])[];
  /** The spread of each set. */
  readonly spreads: readonly number[];
  readonly total: number;
  /** Places left over, in order. */
  readonly left: readonly number[];
  /**
   * Another choice has the same total. Of those the one with the smallest greatest spread was taken,
   * then that of the lower readings.
   */
  readonly isTied: boolean;
}

/**
 * `count` sets of `size` from the readings; undefined where there are too few. Readings that are whole
 * numbers are compared without rounding, so ties are told truly.
 */
export function bestSets(
  readings: readonly number[],
  count: number,
  size: number,
): MatchedSets | undefined {
  if (count < 1 || size < 1 || readings.length < count * size) return undefined;
  const order = readings.map((_, index) => index);
  order.sort((a, b) => readings[a]! - readings[b]! || a - b);
  const sorted = order.map((index) => readings[index]!);
  const { total, isTied, takes } = choose(sorted, count, size);
  const starts = startsOf(takes, sorted.length, count, size);
  const sets = starts.map((start) => order.slice(start, start + size));
  const used = new Set(sets.flat());
  return {
    sets,
    spreads: starts.map((start) => spreadAt(sorted, start, size)),
    total,
    left: readings.map((_, index) => index).filter((index) => !used.has(index)),
    isTied,
  };
}

interface Chosen {
  readonly total: number;
  readonly isTied: boolean;
  /** By readings and sets: whether the last of so many lowest readings is in the last of the sets. */
  readonly takes: Uint8Array;
}

/**
 * For each number of lowest readings the best way to come to 0 to `count` sets among them. A row looks
 * back at the row before and the one `size` before, so no more than those are kept.
 */
function choose(sorted: readonly number[], count: number, size: number): Chosen {
  const width = count + 1;
  const kept = size + 1;
  const totals = new Float64Array(kept * width).fill(Infinity);
  const largest = new Float64Array(kept * width).fill(Infinity);
  /** How many choices of neighbours have the total; 2 for more. */
  const ways = new Uint8Array(kept * width);
  const takes = new Uint8Array((sorted.length + 1) * width);
  for (let length = 0; length <= sorted.length; length++) {
    const row = (length % kept) * width;
    const last = ((length + size) % kept) * width;
    const before = ((length + 1) % kept) * width;
    totals[row] = 0;
    largest[row] = 0;
    ways[row] = 1;
    if (length < size) continue;
    const spread = spreadAt(sorted, length - size, size);
    for (let sets = 1; sets <= Math.min(count, Math.floor(length / size)); sets++) {
      const [without, taking] = [last + sets, before + sets - 1];
      const total = totals[taking]! + spread;
      const most = Math.max(largest[taking]!, spread);
      const isTie = total === totals[without]!;
      const isTaken = total < totals[without]! || (isTie && most < largest[without]!);
      const at = row + sets;
      if (isTie) ways[at] = Math.min(2, ways[without]! + ways[taking]!);
      else ways[at] = isTaken ? ways[taking]! : ways[without]!;
      totals[at] = isTaken ? total : totals[without]!;
      largest[at] = isTaken ? most : largest[without]!;
      takes[length * width + sets] = isTaken ? 1 : 0;
    }
  }
  const end = (sorted.length % kept) * width + count;
  return { total: totals[end]!, isTied: ways[end]! > 1, takes };
}

/** Where the sets of the best choice begin in the sorted readings. */
function startsOf(takes: Uint8Array, length: number, count: number, size: number): number[] {
  const starts: number[] = [];
  let left = length;
  for (let sets = count; sets > 0; ) {
    if (takes[left * (count + 1) + sets] === 1) {
      left -= size;
      sets--;
      starts.push(left);
    } else left--;
  }
  return starts.reverse();
}

function spreadAt(sorted: readonly number[], start: number, size: number): number {
  return sorted[start + size - 1]! - sorted[start]!;
}
