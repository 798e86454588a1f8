/** Stated numbers are held to the digits written, and written anew in their own style. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readWritten } from "../../server/src/quantity/writtenNumber.ts";

/** The text with its number written for another amount. */
function rewritten(text: string, amount: number): string {
  const written = readWritten(text)!;
  const { start, end } = written.span;
  return text.slice(0, start) + written.write(amount) + text.slice(end);
}

describe("a stated value", () => {
  test.each([
    ["24 W", 23.5, true],
    ["24 W", 24.5, true],
    ["24 W", 24.51, false],
    ["24.0 W", 24.06, false],
    ["24.0 W", 24.04, true],
    ["1000 Ω", 1000.4, true],
    ["1000 Ω", 1003, false],
    ["0,54 W", 0.5449, true],
    ["4k7", 4740, true],
    ["4k7", 4760, false],
    ["10k", 10_400, true],
    ["10k", 10_600, false],
    ["1.5e3 Ω", 1540, true],
    ["1.5e3 Ω", 1560, false],
    ["AWG 24", 0.52e-3, true],
    ["AWG 24", 0.55e-3, false],
    ["−12 V", -12.4, true],
    ["65 °C", 65.4, true],
    ["5 kgf·cm", 0.4903325, true],
    ["5 %", 0.0549, true],
    ["0 V", 0.4, true],
    ["0 V", 0.6, false],
  ])("%s is %d: %s", (text, amount, agrees) => {
    expect(readWritten(text)!.agrees(amount)).toBe(agrees);
  });

  test.each(["2 * 3 V", "VCC", "", "5 Volts", "(5 V)", "1/4 W"])(
    "%j has no number of its own",
    (text) => {
      expect(readWritten(text)).toBeUndefined();
    },
  );

  test.each([
    ["24 W", 26.4, "26 W"],
    ["24.0 W", 26.4, "26.4 W"],
    ["0,54 W", 0.621, "0,62 W"],
    ["24 W", 0.246, "0.25 W"],
    ["10 W", 9.6, "9.6 W"],
    ["9.6 W", 10.4, "10.4 W"],
    ["540 mW", 0.621, "621 mW"],
    ["4k7", 5100, "5k1"],
    ["4k7", 47_000, "47k0"],
    ["4k7", 47, "47\u00a0Ω"],
    ["4k7", 5.6e6, "5.6\u00a0MΩ"],
    ["4k7", -5600, "-5k6"],
    ["0k0", 5, "5k0"],
    ["2R2", 1e-12, "1\u00a0pΩ"],
    ["1.5 V", 0, "0.0 V"],
    ["10k", 12_000, "12k"],
    ["1.5 × 10^3 V", 2200, "2.2 × 10^3 V"],
    ["1.5e3 Ω", 2200, "2.2e3 Ω"],
    ["10 000 Ω", 12_345.6, "12 346 Ω"],
    ["10\u202f000 Ω", 1_234_567, "1\u202f234\u202f567 Ω"],
    ["−12 V", -13.2, "−13 V"],
    ["-12 V", -13.2, "-13 V"],
    ["−12 V", 13.2, "13 V"],
    ["12 V", -13.2, "−13 V"],
    ["AWG 24", 0.4e-3, "AWG 26"],
    ["24 AWG", 0.4e-3, "26 AWG"],
    ["1,7 µH", 2.53e-6, "2,5 µH"],
    ["65 °C", 71.2, "71 °C"],
    ["0.5 N·m", 0.62, "0.6 N·m"],
    ["55 %", 0.613, "61 %"],
  ])("%s for %d is written %s", (text, amount, expected) => {
    expect(rewritten(text, amount)).toBe(expected);
  });

  test("written anew agrees with the amount, whatever it was", () => {
    const style = fc.constantFrom("24 W", "0,54 W", "4k7", "10k", "1.5e3 Ω", "10 000 Ω", "3.30 V");
    const amount = fc.tuple(
      fc.double({ min: 1, max: 10, noNaN: true }),
      fc.integer({ min: -3, max: 6 }),
    );
    fc.assert(
      fc.property(style, amount, (text, [mantissa, power]) => {
        const value = mantissa * 10 ** power;
        const next = rewritten(text, value);
        expect(readWritten(next)!.agrees(value), next).toBe(true);
      }),
      { numRuns: 2000 },
    );
  });
});
