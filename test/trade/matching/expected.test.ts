/** What matching brings on average, against tables of order statistics. */
import { describe, expect, test } from "vitest";
import { comparisons, expectedSpread } from "../../../server/src/trade/matching/expected.ts";

test.each([
  [5, 10],
  [10, 45],
  [20, 190],
  [50, 1225],
])("%i parts take %i comparisons of each with each", (lot, count) => {
  expect(comparisons(lot)).toBe(count);
});

/** Averages over some thousand lots; the smallest gap of a lot varies as much as its own mean. */
const WITHIN = 0.05;

function isNear(found: number, expected: number): void {
  expect(Math.abs(found / expected - 1)).toBeLessThan(WITHIN);
}

describe("the best pair of a lot", () => {
  // Exact: 2/√π of two, (6 − 3√3)/√π of three; the others by a million simulated samples.
  test.each([
    [2, 2 / Math.sqrt(Math.PI)],
    [3, (6 - 3 * Math.sqrt(3)) / Math.sqrt(Math.PI)],
    [4, 0.2458],
    [5, 0.1539],
    [6, 0.1055],
    [8, 0.0584],
    [10, 0.03696],
    [20, 0.00907],
  ])("of %i spreads %f σ", (lot, expected) => {
    isNear(expectedSpread(lot, 1, 2)!.total, expected);
  });
});

describe("all pairs of an even lot", () => {
  // Sums of the means of order statistics (Harter, Biometrika 48, 1961), from memory of the table.
  test.each([
    [4, 1.46474],
    [6, 1.654],
    [8, 1.78338],
    [10, 1.88072],
  ])("of %i spread %f σ together", (lot, expected) => {
    isNear(expectedSpread(lot, lot / 2, 2)!.total, expected);
  });
});

describe("the range of a whole lot", () => {
  // The control chart constant d2 (ISO 7870-2), from memory of the table.
  test.each([
    [2, 1.128],
    [3, 1.693],
    [4, 2.059],
    [5, 2.326],
    [8, 2.847],
    [10, 3.078],
  ])("of %i is %f σ", (lot, expected) => {
    isNear(expectedSpread(lot, 1, lot)!.largest, expected);
  });
});

test("the same lots are drawn each time", () => {
  expect(expectedSpread(12, 3, 2)).toEqual(expectedSpread(12, 3, 2));
});

test.each([
  [3, 2, 2],
  [10, 0, 2],
  [10, 2, 1],
  [5000, 2000, 2],
])("%i parts, %i sets of %i: nothing to tell", (lot, sets, size) => {
  expect(expectedSpread(lot, sets, size)).toBeUndefined();
});

test("the most that a hover computes is soon done", () => {
  const start = performance.now();
  expectedSpread(200, 50, 2);
  expect(performance.now() - start).toBeLessThan(10_000);
});
