/** The ends of ranges as text: never narrower than the range, and as the nominal value is shown. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { figureValue } from "../../server/src/quantity/evaluation/value.ts";
import { endsOf, printLimits, printValue } from "../../server/src/quantity/printRange.ts";
import { computed } from "./sums.ts";

/** With plain spaces, to be readable here. */
const plain = (text: string) => text.replaceAll("\u00a0", " ").replaceAll("\u202f", " ");

describe("a range", () => {
  // JCGM 100:2008 (GUM) 7.2.6: an uncertainty with two significant figures, the estimate to the same
  // place, and rounding up rather than to the nearest. NIST SP 811 (2008) 7.9: one prefix where values
  // are held against each other, numbers between 0.1 and 1000; 10.5.3: groups of three digits.
  test.each([
    ["10025 ± 1000", "10 025", "9025 … 11 025"],
    ["10 kΩ ± 9.75 %", "10 kΩ", "9.025 kΩ … 10.975 kΩ"],
    ["13.8 V ± 10 %", "13.8 V", "12.42 V … 15.18 V"],
    ["12.34 V ± 3 %", "12.34 V", "11.96 V … 12.72 V"],
    ["1 V / 3 ± 10 %", "333 mV", "300 mV … 367 mV"],
    ["2 V / 3 ± 10 %", "667 mV", "600 mV … 734 mV"],
    ["-2 V / 3 ± 10 %", "−667 mV", "−734 mV … −600 mV"],
    ["990 mA ± 3 %", "990 mA", "0.9603 A … 1.0197 A"],
    ["0.0966 W ± 10 %", "96.6 mW", "86.94 mW … 106.26 mW"],
    ["1 kΩ ± 1 %", "1 kΩ", "0.99 kΩ … 1.01 kΩ"],
    ["5 mV ± 100 mV", "5 mV", "−95 mV … 105 mV"],
    ["0 V ± 1 mV", "0 V", "−1 mV … 1 mV"],
    ["-12 V ± 10 %", "−12 V", "−13.2 V … −10.8 V"],
    ["4700 µF ± 20 %", "4700 µF", "3760 µF … 5640 µF"],
    ["25 °C ± 5 K", "25 °C", "20 °C … 30 °C"],
    ["55 % ± 5 %", "55 %", "50 % … 60 %"],
    ["10.0000015 V ± 0.5 µV", "10.0000015 V", "10.000001 V … 10.000002 V"],
    ["10 V / 3", "3.33 V", "3.33 V"],
  ])("%s is %s, %s", (text, value, limits) => {
    const result = computed(text);
    expect(plain(printValue(result))).toBe(value);
    expect(plain(printLimits(result))).toBe(limits);
  });
});

const size = fc.double({ min: 1e-12, max: 1e12, noNaN: true });
const share = fc.double({ min: 1e-6, max: 2, noNaN: true });
const place = fc.double({ min: 0, max: 1, noNaN: true });

/** Ranges of any size and sign, with the nominal value anywhere in them. */
const ranges = fc
  .tuple(size, fc.boolean(), share, share, place)
  .map(([amount, negative, below, above, at]) => {
    const middle = negative ? -amount : amount;
    const [min, max] = [middle - amount * below, middle + amount * above];
    return { min, max, nominal: Math.min(max, Math.max(min, min + (max - min) * at)) };
  });

test("is shown no narrower than it is, and by a twentieth of its half-width wider at most", () => {
  fc.assert(
    fc.property(ranges, fc.constantFrom(0, 1), ({ min, max }, finer) => {
      const { low, high } = endsOf({ low: min, high: max }, finer);
      const half = (max - min) / 2;
      const hair = half * 1e-6 + Math.max(Math.abs(min), Math.abs(max)) * 1e-12;
      expect(low).toBeLessThanOrEqual(min + hair);
      expect(high).toBeGreaterThanOrEqual(max - hair);
      expect(min - low).toBeLessThanOrEqual(half / 20 + hair);
      expect(high - max).toBeLessThanOrEqual(half / 20 + hair);
    }),
    { numRuns: 2000 },
  );
});

test("holds the nominal value as that is shown, and reads back as the ends that it shows", () => {
  const kind = computed("1 V");
  const readBack = (text: string) => computed(text.replaceAll("\u202f", " ")).nominal;
  fc.assert(
    fc.property(ranges, ({ min, max, nominal }) => {
      const value = { ...figureValue(kind), nominal, min, max };
      const ends = endsOf({ low: min, high: max });
      const [low, high] = printLimits(value).split(" … ").map(readBack) as [number, number];
      const hair = Math.max(Math.abs(low), Math.abs(high)) * 1e-12;
      expect(Math.abs(low - ends.low)).toBeLessThanOrEqual(hair);
      expect(Math.abs(high - ends.high)).toBeLessThanOrEqual(hair);
      const shown = readBack(printValue(value));
      expect(shown).toBeGreaterThanOrEqual(low - hair);
      expect(shown).toBeLessThanOrEqual(high + hair);
    }),
    { numRuns: 1000 },
  );
});
