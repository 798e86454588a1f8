/** Picking matched sets, against worked cases, a library for matchings in graphs, and trying all. */
import blossom from "edmonds-blossom";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { bestSets } from "../../../server/src/trade/matching/bestSets.ts";

/**
 * The first from the contest problem "Pair choosing" (sample of its statement), the second from a
 * question page with a proof by exchange; the others worked by hand and with NetworkX.
 */
describe.each([
  [
    [3, 1, 2, 7, 9, 3, 4, 7],
    [0, 0, 1, 6],
  ],
  [
    [1515, 1520, 1500, 1535],
    [5, 30],
  ],
  // Taking the closest pair first would end with 22.
  [
    [0, 10, 11, 21],
    [1, 20],
  ],
  [
    [211, 187, 243, 198, 205, 230, 190, 226, 215],
    [3, 7, 11, 18],
  ],
  // Base-emitter voltages in tenths of a millivolt.
  [
    [6012, 6047, 5987, 6021, 6039, 5995],
    [8, 16, 25],
  ],
])("the best pairs of %j", (readings, totals) => {
  test.each(totals.map((total, index) => [index + 1, total]))(
    "that are %i have spreads of %i in all",
    (count, total) => {
      expect(bestSets(readings, count, 2)!.total).toBe(total);
    },
  );
});

test("nine gains in four pairs leave the highest over", () => {
  const { left } = bestSets([211, 187, 243, 198, 205, 230, 190, 226, 215], 4, 2)!;
  expect(left).toEqual([2]);
});

/** Least total of `count` pairs by a perfect matching: who stays single is paired with a dummy. */
function byMatching(readings: readonly number[], count: number): number {
  const n = readings.length;
  const edges: [number, number, number][] = [];
  for (let a = 0; a < n; a++) {
    for (let b = a + 1; b < n; b++) edges.push([a, b, -Math.abs(readings[a]! - readings[b]!)]);
    for (let dummy = n; dummy < 2 * n - 2 * count; dummy++) edges.push([a, dummy, 0]);
  }
  const mates: number[] = blossom(edges, true);
  let total = 0;
  for (let a = 0; a < n; a++) {
    const b = mates[a]!;
    if (b > a && b < n) total += Math.abs(readings[a]! - readings[b]!);
  }
  return total;
}

const lots = fc
  .tuple(fc.array(fc.integer({ min: 0, max: 60 }), { minLength: 2, maxLength: 12 }), fc.nat(5))
  .map(([readings, more]) => ({ readings, count: 1 + (more % Math.floor(readings.length / 2)) }));

test("pairs are as good as a minimum-weight matching", () => {
  fc.assert(
    fc.property(lots, ({ readings, count }) => {
      expect(bestSets(readings, count, 2)!.total).toBe(byMatching(readings, count));
    }),
    { numRuns: 400 },
  );
});

/** All ways to take `count` sets of `size`, as totals. */
function allTotals(readings: readonly number[], count: number, size: number): number[] {
  if (count === 0) return [0];
  const totals: number[] = [];
  const pick = (from: number, set: readonly number[], rest: readonly number[]): void => {
    if (set.length === size) {
      const spread = Math.max(...set) - Math.min(...set);
      // The first member orders the sets, so that none is counted twice.
      for (const total of allTotals(rest, count - 1, size)) totals.push(total + spread);
      return;
    }
    for (let i = from; i < rest.length; i++) {
      pick(i, [...set, rest[i]!], [...rest.slice(0, i), ...rest.slice(i + 1)]);
    }
  };
  pick(0, [], readings);
  return totals;
}

test.each([
  [3, 2, 8],
  [4, 2, 8],
  [2, 3, 7],
])("sets of %i, %i of them, are the best of all choices", (size, count, most) => {
  const readings = fc.array(fc.integer({ min: 0, max: 30 }), {
    minLength: size * count,
    maxLength: most,
  });
  fc.assert(
    fc.property(readings, (lot) => {
      expect(bestSets(lot, count, size)!.total).toBe(Math.min(...allTotals(lot, count, size)));
    }),
    { numRuns: 40 },
  );
});

test("what is told fits together", () => {
  fc.assert(
    fc.property(lots, ({ readings, count }) => {
      const { sets, spreads, total, left } = bestSets(readings, count, 2)!;
      expect(spreads.reduce((sum, spread) => sum + spread, 0)).toBe(total);
      expect(sets.length).toBe(count);
      expect([...sets.flat(), ...left].sort((a, b) => a - b)).toEqual(readings.map((_, i) => i));
      for (const [index, [low, high]] of sets.entries()) {
        expect(readings[high!]! - readings[low!]!).toBe(spreads[index]);
      }
    }),
  );
});

test("a tie is told, and decided for the smaller greatest spread, then the lower readings", () => {
  // Two pairs with 2 in all: 0–1 and 2–3, or 0–1 and 3–4, or 1–2 and 3–4.
  const tied = bestSets([0, 1, 2, 3, 4], 2, 2)!;
  expect(tied).toMatchObject({ total: 2, isTied: true, left: [4] });
  expect(bestSets([0, 1, 10, 13], 2, 2)!.isTied).toBe(false);
});

test("too few readings give no sets", () => {
  expect(bestSets([1, 2, 3], 2, 2)).toBeUndefined();
  expect(bestSets([1, 2, 3], 0, 2)).toBeUndefined();
});

test("a lot of 2,000 is picked at once", () => {
  const readings = Array.from({ length: 2000 }, (_, i) => (i * 7919) % 10_007);
  const start = process.cpuUsage();
  expect(bestSets(readings, 500, 2)!.sets.length).toBe(500);
  expect(process.cpuUsage(start).user / 1000).toBeLessThan(3000);
});
