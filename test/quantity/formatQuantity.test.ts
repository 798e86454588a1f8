import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { formatQuantity } from "../../server/src/quantity/formatQuantity.ts";
import { readValue, sameValue } from "../../server/src/quantity/readValue.ts";

/** With plain spaces, to be readable here. */
const shown = (amount: number, unit: Parameters<typeof formatQuantity>[0]["unit"]) =>
  formatQuantity({ amount, unit }).replaceAll("\u00a0", " ").replaceAll("\u202f", "_");

describe("quantities as text", () => {
  test("have a no-break space before the unit", () => {
    // NIST SP 811 (2008) 7.2; SI brochure 5.3.3: 10 kΩ, not 10kΩ.
    expect(formatQuantity({ amount: 10e3, unit: "Ω" })).toBe("10\u00a0kΩ");
    expect(formatQuantity({ amount: 5, unit: "%" })).toBe("5\u00a0%");
  });

  test("take the prefix that keeps the figure between 1 and 1000", () => {
    expect(shown(4700, "Ω")).toBe("4.7 kΩ");
    expect(shown(1e6, "Ω")).toBe("1 MΩ");
    expect(shown(100e-9, "F")).toBe("100 nF");
    expect(shown(4.7e-10, "F")).toBe("470 pF");
    expect(shown(3.3e-13, "F")).toBe("0.33 pF");
    expect(shown(32768, "Hz")).toBe("32.768 kHz");
    expect(shown(0.6, "A")).toBe("600 mA");
    expect(shown(0, "Ω")).toBe("0 Ω");
    expect(shown(0.82, "m")).toBe("820 mm");
    expect(shown(7, "1")).toBe("7");
  });

  test("follow the trade where it differs", () => {
    // NIST SP 811 7.9 allows figures from 0.1 on; parts lists write 0.47 Ω, 0.25 W, 4700 µF.
    expect(shown(0.47, "Ω")).toBe("0.47 Ω");
    expect(shown(0.05, "Ω")).toBe("50 mΩ");
    expect(shown(0.25, "W")).toBe("0.25 W");
    expect(shown(4700e-6, "F")).toBe("4700 µF");
    expect(shown(22000e-6, "F")).toBe("22_000 µF");
    expect(shown(1, "F")).toBe("1 F");
  });

  test("show no binary rounding and a true minus", () => {
    expect(shown(0.1 + 0.2, "V")).toBe("300 mV");
    expect(shown(999.9999999999, "Ω")).toBe("1 kΩ");
    expect(shown(-5, "V")).toBe("\u22125 V");
  });

  test("are read back as the same value", () => {
    const amount = fc
      .tuple(fc.integer({ min: 100, max: 999 }), fc.integer({ min: -14, max: 9 }))
      .map(([figures, power]) => Number(`${figures}e${power}`));
    fc.assert(
      fc.property(amount, fc.constantFrom("Ω" as const, "F" as const), (amount, unit) => {
        fc.pre(unit === "Ω" ? amount >= 1e-3 : amount < 0.1);
        const letters = unit === "Ω" ? "R" : "C";
        const back = readValue(formatQuantity({ amount, unit }), letters).value;
        expect(back && sameValue(back, { amount, unit })).toBe(true);
      }),
    );
  });
});
