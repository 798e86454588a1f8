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

/** The best way to come to so many sets among the lowest readings. */
interface Choice {
  readonly total: number;
  readonly largest: number;
  /** How many choices of neighbours have this total. */
  readonly ways: number;
  /** Whether the last of the readings is in the last set. */
  readonly takes: boolean;
}

const IMPOSSIBLE: Choice = { total: Infinity, largest: Infinity, ways: 0, takes: false };
const NOTHING: Choice = { total: 0, largest: 0, ways: 1, takes: false };

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
  const choices = choose(sorted, count, size);
  const starts = startsOf(choices, count, size);
  const sets = starts.map((start) => order.slice(start, start + size));
  const used = new Set(sets.flat());
  return {
    sets,
    spreads: starts.map((start) => spreadAt(sorted, start, size)),
    total: choices[sorted.length]![count]!.total,
    left: readings.map((_, index) => index).filter((index) => !used.has(index)),
    isTied: choices[sorted.length]![count]!.ways > 1,
  };
}

/** For each number of lowest readings the best choice of 0 to `count` sets among them. */
function choose(sorted: readonly number[], count: number, size: number): Choice[][] {
  const choices: Choice[][] = [];
  for (let length = 0; length <= sorted.length; length++) {
    const row: Choice[] = [NOTHING];
    for (let sets = 1; sets <= count; sets++) {
      const without = choices[length - 1]?.[sets] ?? IMPOSSIBLE;
      const before = choices[length - size]?.[sets - 1] ?? IMPOSSIBLE;
      row.push(better(without, extended(before, spreadAt(sorted, length - size, size))));
    }
    choices.push(row);
  }
  return choices;
}

function extended({ total, largest, ways }: Choice, spread: number): Choice {
  if (ways === 0) return IMPOSSIBLE;
  return { total: total + spread, largest: Math.max(largest, spread), ways, takes: true };
}

function better(without: Choice, taking: Choice): Choice {
  const takes =
    taking.total < without.total ||
    (taking.total === without.total && taking.largest < without.largest);
  const { total, largest, ways } = takes ? taking : without;
  const isTied = taking.total === without.total;
  return { total, largest, takes, ways: isTied ? Math.min(without.ways + taking.ways, 2) : ways };
}

/** Where the sets of the best choice begin in the sorted readings. */
function startsOf(choices: readonly (readonly Choice[])[], count: number, size: number): number[] {
  const starts: number[] = [];
  let length = choices.length - 1;
  for (let sets = count; sets > 0; ) {
    if (choices[length]![sets]!.takes) {
      length -= size;
      sets--;
      starts.unshift(length);
    } else length--;
  }
  return starts;
}

function spreadAt(sorted: readonly number[], start: number, size: number): number {
  return sorted[start + size - 1]! - sorted[start]!;
}
