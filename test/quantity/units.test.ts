/** Units against two libraries that know nothing of this one, and against exact definitions. */
import Qty from "js-quantities";
import { all, create } from "mathjs";
import { describe, expect, test } from "vitest";
import { unitSymbols } from "../../server/src/quantity/unitMeanings.ts";
import { readUnitAt, readWholeUnit } from "../../server/src/quantity/unitText.ts";
import { computed } from "./sums.ts";

const math = create(all!);

/** The same amount in coherent SI units by mathjs. */
function byMathjs(text: string): number {
  return math.unit(text).toSI().toNumber(math.unit(text).toSI().formatUnits());
}

describe("units agree with mathjs 15.2.0", () => {
  // Left: as figures write it. Right: as mathjs does; it has no Ω sign, and `in` is an operator there.
  test.each([
    ["4.7 kΩ", "4.7 kohm"],
    ["4.7 kohm", "4.7 kohm"],
    ["3 MΩ", "3 Mohm"],
    ["50 mV", "50 mV"],
    ["13.8 V", "13.8 V"],
    ["45 mA", "45 mA"],
    ["7 µA", "7 uA"],
    ["7 uA", "7 uA"],
    ["100 nF", "100 nF"],
    ["22 pF", "22 pF"],
    ["2.5 µH", "2.5 uH"],
    ["7.1 MHz", "7.1 MHz"],
    ["0.25 W", "0.25 W"],
    ["2 kW", "2 kW"],
    ["3 J", "3 J"],
    ["5 kgf·cm", "5 kgf cm"],
    ["0.5 N·m", "0.5 N m"],
    ["55 cN·m", "55 cN m"],
    ["7 lbf·in", "7 lbf inch"],
    ["3 in", "3 inch"],
    ["62 mil", "62 mil"],
    ["2300 ft", "2300 ft"],
    ["5 min", "5 minute"],
    ["2 h", "2 hour"],
    ["30 cm", "30 cm"],
    ["12 g", "12 g"],
    ["3 oz", "3 oz"],
    ["2 lb", "2 lbm"],
    ["8 K/W", "8 K / W"],
    ["58 S·m/mm²", "58 S m / mm^2"],
    ["1.5 mm²", "1.5 mm^2"],
    ["0.2 W/(m·K)", "0.2 W / (m K)"],
    ["90°", "90 deg"],
    ["2 Wb", "2 Wb"],
    ["100 kPa", "100 kPa"],
  ])("%s", (ours, theirs) => {
    expect(computed(ours).nominal / byMathjs(theirs)).toBeCloseTo(1, 12);
  });
});

describe("units agree with js-quantities 1.8.0, which knows no kgf and no ozf", () => {
  test.each([
    ["4.7 kΩ", "4.7 kOhm", "Ohm"],
    ["0.55 N·m", "0.55 N*m", "N*m"],
    ["7 lbf·in", "7 lbf*in", "N*m"],
    ["100 nF", "100 nF", "F"],
    ["2.5 µH", "2.5 uH", "H"],
    ["3000 rpm", "3000 rpm", "Hz"],
    ["62 mil", "62 mil", "m"],
    ["5 min", "5 min", "s"],
    ["2.2 Ah", "2.2 Ah", "C"],
  ])("%s", (ours, theirs, unit) => {
    // There a revolution is an angle; here rpm is a frequency.
    const expected = unit === "Hz" ? 50 : Qty.parse(theirs)?.to(unit).scalar;
    if (expected === undefined || expected === null) throw new Error(`no ${theirs}`);
    expect(computed(ours).nominal / expected).toBeCloseTo(1, 6);
  });

  test("0.55 N·m are 4.867909764 lbf·in", () => {
    // The figure that js-quantities gives.
    expect(Qty("0.55 N*m").to("lbf*in").scalar).toBeCloseTo(4.867909764, 8);
    expect(computed("0.55 N·m / (1 lbf·in)").nominal).toBeCloseTo(4.867909764, 6);
  });
});

describe("units agree with what GNU Units 2.22 and the definitions give", () => {
  test.each([
    ["5 kgf·cm", 0.4903325, "N·m"], // GNU Units
    ["7 kgf·cm", 0.6864655, "N·m"], // GNU Units
    ["8 kgf·cm", 0.784532, "N·m"], // GNU Units
    ["1 kgf·cm", 0.0980665, "N·m"], // NIST SP 811 appendix B
    ["1 in", 0.0254, "m"], // exact by definition
    ["1 mil", 0.0000254, "m"],
    ["1 ozf·in", 0.00706155, "N·m"], // NIST SP 811 appendix B
    ["1 lbf·in", 0.1129848, "N·m"], // NIST SP 811 appendix B
    ["AWG 18", 1.0236873e-3, "m"], // GNU Units, wiregauge(18)
    ["24 AWG", 0.51055923e-3, "m"], // GNU Units, wiregauge(24)
    ["AWG 36", 0.127e-3, "m"], // ASTM B258 by definition
    ["AWG24", 0.51055923e-3, "m"],
    ["AWG 4/0", 11.684e-3, "m"], // ASTM B258 by definition: 0.46 in
    ["50 Ncm", 0.5, "N·m"],
    ["1/4 W", 0.25, "W"], // common practice: ratings and drills in fractions
    ["3/8 in", 9.525e-3, "m"],
    ["1.5 × 10³ V", 1500, "V"],
    ["4.7·10^-3 A", 4.7e-3, "A"],
  ])("%s is %d %s", (text, amount, unit) => {
    const value = computed(text);
    expect(value.nominal / amount).toBeCloseTo(1, 6);
    expect(value.unit).toBe(unit);
  });
});

test("thick wires have their gauge in noughts", () => {
  // ASTM B258, as tables print it: 2/0 is 0.3648 in, 1/0 is 0.3249 in.
  expect(computed("AWG 2/0 / (1 in)").nominal).toBeCloseTo(0.3648, 4);
  expect(computed("AWG 1/0 / (1 in)").nominal).toBeCloseTo(0.3249, 4);
});

describe("a unit is read as it stands", () => {
  test.each([
    ["kΩ", "Ω"],
    ["kOhm", "Ω"],
    ["K/W", "K/W"],
    ["°C/W", "K/W"],
    ["N·m", "N·m"],
    ["Nm", "N·m"],
    ["kgf cm", "N·m"],
    ["ozf in", "N·m"],
    ["mm²", "m²"],
    ["mm^2", "m²"],
    ["W/(m·K)", "W/(m·K)"],
    ["ppm/K", "1/K"],
    ["\u03bcF", "F"], // µ as the Greek letter
    ["k\u2126", "Ω"], // the ohm sign
    ["\u2103", "°C"],
  ])("%s is printed in %s", (text, coherent) => {
    expect(readWholeUnit(text)?.coherent).toBe(coherent);
  });

  test.each([
    ["V / R1", 1],
    ["V/R1", 1],
    ["V·x", 1],
    ["V/A", 3],
    ["W/(m·x)", 1],
    ["N x", 1],
    ["N mm", 4],
    ["V m", 1],
  ])("of %s the first %d characters", (text, end) => {
    expect(readUnitAt(text, 0)?.end).toBe(end);
  });

  test.each(["", "x", "Kohm", "KHz", "mho", "5", "kk", "/W", "uu"])("%j is none", (text) => {
    expect(readWholeUnit(text)).toBeUndefined();
  });

  test("no symbol stands for two things", () => {
    const symbols = [...unitSymbols()];
    expect(new Set(symbols).size).toBe(symbols.length);
    // Where prefix and symbol could be read in two ways the shorter reading is the usual one.
    expect(readWholeUnit("min")?.coherent).toBe("s");
    expect(readWholeUnit("cd")?.coherent).toBe("cd");
    expect(readWholeUnit("ft")?.coherent).toBe("m");
    expect(readWholeUnit("mm")?.exponent).toBe(-3);
    expect(readWholeUnit("Pa")?.coherent).toBe("Pa");
  });
});
