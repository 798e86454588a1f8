import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  isPreferred,
  preferredValue,
  SERIES,
  seriesValues,
} from "../../../server/src/trade/resistors/preferred.ts";

// IEC 60063:2015 as listed by the Python package eseries.
const E24 = "10 11 12 13 15 16 18 20 22 24 27 30 33 36 39 43 47 51 56 62 68 75 82 91".split(" ");
const E48 =
  "100 105 110 115 121 127 133 140 147 154 162 169 178 187 196 205 215 226 237 249 261 274 287 301 316 332 348 365 383 402 422 442 464 487 511 536 562 590 619 649 681 715 750 787 825 866 909 953".split(
    " ",
  );
const BETWEEN =
  "102 107 113 118 124 130 137 143 150 158 165 174 182 191 200 210 221 232 243 255 267 280 294 309 324 340 357 374 392 412 432 453 475 499 523 549 576 604 634 665 698 732 768 806 845 887 931 976".split(
    " ",
  );

const figures = (series: string, of: number) =>
  seriesValues(series)!.map((value) => String(Math.round(value * of)));

describe("Preferred series", () => {
  test("are those of the standard", () => {
    expect(figures("E3", 10)).toEqual(["10", "22", "47"]);
    expect(figures("E6", 10)).toEqual(["10", "15", "22", "33", "47", "68"]);
    expect(figures("E12", 10)).toEqual(E24.filter((_, place) => place % 2 === 0));
    expect(figures("E24", 10)).toEqual(E24);
    expect(figures("E48", 100)).toEqual(E48);
    expect(figures("E96", 100)).toEqual([...E48, ...BETWEEN].sort());
    expect(figures("E192", 100)).toHaveLength(192);
    expect(figures("E192", 100)[185]).toBe("920");
    expect(seriesValues("E7")).toBeUndefined();
  });

  // 120 and 160 are in E24 and not in E96; 130 and 150 are in both.
  test("are not all subsets of each other", () => {
    expect([120, 160, 130, 150].map((value) => isPreferred(value, "E96"))).toEqual([
      false,
      false,
      true,
      true,
    ]);
  });
});

describe("The nearest preferred value", () => {
  // Worked examples of the Python package eseries.
  test.each([
    [319, "E24", "nearest", 330],
    [37_726, "E24", "nearest", 39_000],
    [184, "E96", "up", 187],
    [52e3, "E48", "up", 53.6e3],
    [52e6, "E48", "down", 51.1e6],
    [52e6, "E48", "up", 53.6e6],
    [4900, "E24", "down", 4700],
    [5200, "E24", "up", 5600],
  ] as const)("to %d in %s, %s, is %d", (amount, series, rounding, expected) => {
    expect(preferredValue(amount, series, rounding)).toBe(expected);
  });

  test("goes over the end of a decade", () => {
    expect(preferredValue(9.9, "E12", "nearest")).toBe(10);
    expect(preferredValue(9.9, "E12", "down")).toBe(8.2);
    expect(preferredValue(1.01e-9, "E3", "down")).toBe(1e-9);
  });

  test("of a preferred value is the value, in every series and rounding", () => {
    const decade = fc.integer({ min: -12, max: 8 });
    fc.assert(
      fc.property(decade, fc.nat(191), fc.constantFrom(...SERIES), (power, place, series) => {
        const values = seriesValues(series)!;
        const value = Number(`${values[place % values.length]}e${power}`);
        for (const rounding of ["nearest", "up", "down"] as const) {
          expect(preferredValue(value, series, rounding)).toBe(value);
        }
      }),
    );
  });

  test("does not exist for nothing, less than nothing or an unknown series", () => {
    for (const amount of [0, -1, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(preferredValue(amount, "E24", "nearest")).toBeNaN();
    }
    expect(preferredValue(100, "E13", "nearest")).toBeNaN();
  });
});
