/**
 * Pairs the elements of two rows that are alike, in order: first where a run of three stands just once
 * in either row, then between those pairs by a longest common subsequence. So a long recording takes
 * time in proportion to its length, not to its square.
 */

/** Where gaps between sure pairs have more combinations than this, no more is paired in them. */
const MOST_CELLS = 4_000_000;

/** For each element of `a` the index of its like in `b`, or -1; the indices rise. */
export function align(a: readonly string[], b: readonly string[]): Int32Array {
  const pairs = new Int32Array(a.length).fill(-1);
  let [fromA, fromB] = [0, 0];
  for (const [endA, endB] of [...anchors(a, b), [a.length, b.length] as const]) {
    fill(a, b, { fromA, fromB, endA, endB }, pairs);
    if (endA < a.length) pairs[endA] = endB;
    [fromA, fromB] = [endA + 1, endB + 1];
  }
  return pairs;
}

type Pair = readonly [number, number];

/** Beginnings of runs of three that both rows have just once, as many as rise in both. */
function anchors(a: readonly string[], b: readonly string[]): Pair[] {
  const [inA, inB] = [uniqueRuns(a), uniqueRuns(b)];
  const pairs: Pair[] = [];
  for (const [run, at] of inA) {
    const there = inB.get(run);
    if (at >= 0 && there !== undefined && there >= 0) pairs.push([at, there]);
  }
  return rising(pairs.sort(([one], [other]) => one - other));
}

/** Where each run of three begins; -1 for one that comes twice. */
function uniqueRuns(row: readonly string[]): ReadonlyMap<string, number> {
  const runs = new Map<string, number>();
  for (let at = 0; at + 2 < row.length; at++) {
    const run = `${row[at]}\n${row[at + 1]}\n${row[at + 2]}`;
    runs.set(run, runs.has(run) ? -1 : at);
  }
  return runs;
}

/** The longest choice of pairs whose second numbers rise (patience sorting). */
function rising(pairs: readonly Pair[]): Pair[] {
  const ends: number[] = [];
  const before: number[] = [];
  for (const [index, [, value]] of pairs.entries()) {
    let [low, high] = [0, ends.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (pairs[ends[middle]!]![1] < value) low = middle + 1;
      else high = middle;
    }
    before[index] = low > 0 ? ends[low - 1]! : -1;
    ends[low] = index;
  }
  const chosen: Pair[] = [];
  for (let index = ends.at(-1) ?? -1; index >= 0; index = before[index]!) {
    chosen.push(pairs[index]!);
  }
  return chosen.reverse();
}

interface Gap {
  readonly fromA: number;
  readonly fromB: number;
  readonly endA: number;
  readonly endB: number;
}

/** Pairs what a gap holds, by a longest common subsequence. */
function fill(a: readonly string[], b: readonly string[], gap: Gap, pairs: Int32Array): void {
  const { fromA, fromB, endA, endB } = gap;
  const [rows, columns] = [endA - fromA, endB - fromB];
  if (rows <= 0 || columns <= 0 || rows * columns > MOST_CELLS) return;
  const width = columns + 1;
  const lengths = new Uint32Array((rows + 1) * width);
  for (let i = rows - 1; i >= 0; i--) {
    for (let j = columns - 1; j >= 0; j--) {
      lengths[i * width + j] =
        a[fromA + i] === b[fromB + j]
          ? lengths[(i + 1) * width + j + 1]! + 1
          : Math.max(lengths[(i + 1) * width + j]!, lengths[i * width + j + 1]!);
    }
  }
  for (let i = 0, j = 0; i < rows && j < columns; ) {
    if (a[fromA + i] === b[fromB + j]) pairs[fromA + i++] = fromB + j++;
    else if (lengths[(i + 1) * width + j]! >= lengths[i * width + j + 1]!) i++;
    else j++;
  }
}
