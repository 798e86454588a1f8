/** Results as text. */
import { describe, expect, test } from "vitest";
import { printAmount } from "../../server/src/quantity/printing.ts";
import { printLimits, printValue } from "../../server/src/quantity/printRange.ts";
import { resultUnit } from "../../server/src/quantity/resultUnits.ts";
import { readWholeUnit } from "../../server/src/quantity/unitText.ts";
import { computed } from "./sums.ts";

/** With plain spaces, to be readable here. */
const plain = (text: string) => text.replaceAll("\u00a0", " ").replaceAll("\u202f", "_");

describe("amounts", () => {
  // NIST SP 811 (2008) 7.2 (space), 6.1.5 (N·m with a dot), 6.2.8 (one prefix), 10.5.2 (zero before
  // the decimal marker), 7.9 (figures between 0.1 and 1000).
  test.each([
    [24, "W", "24 W"],
    [0.25, "W", "0.25 W"],
    [0.045, "A", "45 mA"],
    [2.5e-6, "H", "2.5 µH"],
    [0.5, "N·m", "0.5 N·m"],
    [0.055, "N·m", "55 mN·m"],
    [-0.58, "V", "−580 mV"],
    [0.0032, "m", "3.2 mm"],
    [12, "m", "12 m"],
    [1200, "s", "1200 s"],
    [0.55, "%", "55 %"],
    [25, "°C", "25 °C"],
    [313.15, "K", "313.15 K"],
    [8, "K/W", "8 K/W"],
    [12e-6, "m²", "12 mm²"],
    [2e-6, "m³", "2 cm³"],
    [0.005, "kg", "5 g"],
    [1.5, "kg", "1.5 kg"],
    [5000, "V/m", "5 kV/m"],
    [0.0842, "Ω/m", "84.2 mΩ/m"],
    [3.93e-3, "1/K", "0.00393 K⁻¹"],
    [1e15, "Hz", "1000 THz"],
    [1e25, "Ω", "1 × 10¹³ TΩ"],
    [2e-20, "F", "2 × 10⁻⁸ pF"],
    [25, "1", "25"],
    [123456, "1", "123_456"],
    [0, "V", "0 V"],
  ])("%d %s is %s", (amount, unit, text) => {
    expect(plain(printAmount(amount, unit))).toBe(text);
  });
});

describe("results have as many figures as their tolerance and inputs give sense to", () => {
  test.each([
    ["(40 V - -40 V) * 0.3 A", "24 W", "24 W"],
    ["13.8 V ± 10 %", "13.8 V", "12.42 V … 15.18 V"],
    ["100 kΩ ± 1 %", "100 kΩ", "99 kΩ … 101 kΩ"],
    ["1 V / 3", "333 mV", "333 mV"],
    ["1.0000 V / 3", "333.33 mV", "333.33 mV"],
    ["2 * pi", "6.28319", "6.28319"],
    ["10 V / 3 ± 0.1 %", "3.3333 V", "3.33 V … 3.3367 V"],
    ["1 / (2 * pi * 1 kΩ * 100 nF)", "1.59 kHz", "1.59 kHz"],
    ["5 N * 20 cm", "1 N·m", "1 N·m"],
    ["5 kgf·cm", "0.49 N·m", "0.49 N·m"],
  ])("%s is %s, between %s", (text, value, limits) => {
    const result = computed(text);
    expect(plain(printValue(result))).toBe(value);
    expect(plain(printLimits(result))).toBe(limits);
  });
});

test("a unit is chosen by the dimension alone", () => {
  for (const [written, unit] of [
    ["V·A", "W"],
    ["V/A", "Ω"],
    ["A·s", "C"],
    ["C/V", "F"],
    ["V·s", "Wb"],
    ["N·m", "J"],
    ["J/s", "W"],
    ["Ω·F", "s"],
    ["H/Ω", "s"],
    ["W/A", "V"],
    ["V·V/Ω", "W"],
    ["mm²", "m²"],
    ["V/V", "1"],
    ["kg·m/A", "m·kg/A"],
  ] as const) {
    expect(resultUnit(readWholeUnit(written)!.dimension), written).toBe(unit);
  }
});
