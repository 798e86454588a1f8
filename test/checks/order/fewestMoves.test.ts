import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fewestMoves, isTooLow, type Unit } from "../../../server/src/checks/order/fewestMoves.ts";

const NONE = Number.NEGATIVE_INFINITY;

function units(...heights: number[]): Unit[] {
  return heights.map((height) => ({ height, weight: 1 }));
}

function weightOf(sequence: readonly Unit[], moves: readonly number[]): number {
  return moves.reduce((sum, index) => sum + sequence[index]!.weight, 0);
}

function isOrdered(kept: readonly Unit[], top: number, tolerance: number): boolean {
  return kept.every(
    (unit, i) =>
      !isTooLow(unit.height, top, tolerance) &&
      kept.slice(0, i).every((before) => !isTooLow(unit.height, before.height, tolerance)),
  );
}

/** Tries every subset. */
function bruteForce(sequence: readonly Unit[], top: number, tolerance: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let subset = 0; subset < 1 << sequence.length; subset++) {
    const kept = sequence.filter((_, i) => subset & (1 << i));
    if (!isOrdered(kept, top, tolerance)) continue;
    const all = sequence.reduce((sum, unit) => sum + unit.weight, 0);
    least = Math.min(least, all - kept.reduce((sum, unit) => sum + unit.weight, 0));
  }
  return least;
}

const anyUnit = fc.record({
  height: fc.integer({ min: 0, max: 40 }).map((n) => n / 5),
  weight: fc.integer({ min: 1, max: 5 }),
});

describe("the fewest parts that would have to move", () => {
  test("none where each part is as tall as those before it, within the tolerance", () => {
    expect(fewestMoves(units(2.5, 2, 3, 2.1, 11), NONE, 1)).toEqual([]);
  });

  test("a difference of exactly the tolerance is in order, whatever the rounding", () => {
    for (const [low, high] of [
      [0.1, 1.1],
      [2.3, 3.3],
      [10.4, 11.4],
      [1.7, 2.7],
    ] as const) {
      expect(fewestMoves(units(high, low), NONE, 1)).toEqual([]);
    }
    expect(fewestMoves(units(3.51, 2.5), NONE, 1)).toEqual([1]);
  });

  test("one low part after a tall one", () => {
    expect(fewestMoves(units(2.5, 11, 2.5, 12, 15), NONE, 1)).toEqual([2]);
  });

  test("one tall part before many low ones", () => {
    expect(fewestMoves(units(11, 2.5, 2.5, 2.5), NONE, 1)).toEqual([0]);
  });

  test("of equally short answers the taller part stays", () => {
    expect(fewestMoves(units(11, 2.5), NONE, 1)).toEqual([1]);
  });

  test("parts count, not marks", () => {
    const sequence = [
      { height: 11, weight: 3 },
      { height: 2.5, weight: 2 },
      { height: 4, weight: 2 },
    ];
    expect(fewestMoves(sequence, NONE, 1)).toEqual([0]);
    expect(fewestMoves(sequence.slice(0, 2), NONE, 1)).toEqual([1]);
  });

  test("what is lower than the part in place before the stage has to move in any case", () => {
    expect(fewestMoves(units(2.5, 2.5, 10, 12), 11, 1)).toEqual([0, 1]);
  });

  test("is as few as the best of all subsets, and what stays is in order", () => {
    fc.assert(
      fc.property(
        fc.array(anyUnit, { maxLength: 10 }),
        fc.oneof(fc.constant(NONE), fc.integer({ min: 0, max: 8 })),
        fc.constantFrom(0, 0.4, 1, 2.2),
        (sequence, top, tolerance) => {
          const moves = fewestMoves(sequence, top, tolerance);
          const kept = sequence.filter((_, i) => !moves.includes(i));
          expect(isOrdered(kept, top, tolerance)).toBe(true);
          expect(weightOf(sequence, moves)).toBe(bruteForce(sequence, top, tolerance));
        },
      ),
      { numRuns: 1500 },
    );
  });

  test("takes 60,000 parts of 60,000 heights upside down in seconds", () => {
    const sequence = Array.from({ length: 60_000 }, (_, i) => ({ height: 60_000 - i, weight: 1 }));
    const begin = performance.now();
    // Neighbours differ by exactly the tolerance, so two of them may stay.
    expect(fewestMoves(sequence, NONE, 1)).toHaveLength(59_998);
    expect(performance.now() - begin).toBeLessThan(10_000);
  });
});
