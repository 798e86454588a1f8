/** Values, limits and units of expressions. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { coherentValue } from "../../server/src/quantity/coherent.ts";
import { rootSumSquare } from "../../server/src/quantity/evaluation/rootSumSquare.ts";
import type { FormulaFunctions } from "../../server/src/quantity/functions.ts";
import { computed, type Definitions, problemOf, sum } from "./sums.ts";

const RAILS: Definitions = {
  VCC: "40 V",
  VEE: "-40 V",
  Iq: "0.3 A",
  V: "13.8 V ± 10 %",
  I: "45 mA ± 10 %",
  R: "4k7 ± 1 %",
  Ta: "25 °C ± 10 K",
};

describe("worked examples come out as printed", () => {
  // Sources: see each row.
  test.each([
    ["(VCC - VEE) * Iq", 24, "W"], // common practice: two rails of 40 V and 0.3 A idle
    ["(30 V)^2 / (2 * 16 Ω)", 28.125, "W"], // Boylestad/Nashelsky, Electronic Devices, ex. 12.8
    ["2 * (30 V)^2 / (pi * 16 Ω)", 35.81, "W"], // the same example
    ["25 °C + 125 W * (0.4 K/W + 0.1 K/W + 0.5 K/W)", 150, "°C"], // Rashid, ex. 4.4
    ["(175 °C - 25 °C) / 20 W", 7.5, "K/W"], // a rating of 20 W at 25 °C case, 175 °C
    ["(6 V - 1.6 V) / 20 mA", 220, "Ω"], // Lessons In Electric Circuits, Semiconductors ch. 3
    ["1 / (2 * pi * 1 kΩ * 100 nF)", 1591.549, "Hz"], // corner of an RC filter
    ["10 kΩ ∥ 10 kΩ", 5000, "Ω"],
    ["1 kΩ ∥ 2 kΩ ∥ 2 kΩ", 500, "Ω"],
    ["1 kΩ * 8 µF * ln(10 kV / 500 V)", 23.97e-3, "s"], // OpenStax College Physics, ex. 21.7
    ["0.5 * 8 µF * (10 kV)^2", 400, "J"], // OpenStax College Physics, ex. 19.11
    ["2 A / (2 * 50 Hz * 10000 µF)", 2, "V"], // I/(2fC), full-wave ripple
    ["sqrt(4 W * 100 Ω)", 20, "V"],
    ["2 A * 5 %", 0.1, "A"],
    ["5 N * 20 cm", 1, "N·m"],
    ["sin(30°) + cos(pi / 3)", 1, "1"],
    ["exp(ln(7))", 7, "1"],
    ["abs(VEE)", 40, "V"],
    ["min(3 V; 2 V; 5 V) + max(1 V; 2 V)", 4, "V"],
    ["25^2 * 4.0 nH", 2.5e-6, "H"],
    ["3 dB + 10 dB", 13, "dB"],
  ])("%s = %d %s", (text, nominal, unit) => {
    const value = computed(text, RAILS);
    expect(value.nominal / nominal).toBeCloseTo(1, 3);
    expect(value.unit).toBe(unit);
  });
});

describe("limits", () => {
  test.each([
    ["V", 12.42, 15.18],
    ["V - V", 0, 0],
    ["V / V", 1, 1],
    ["V * I", 12.42 * 0.0405, 15.18 * 0.0495],
    ["I^2 * R", 0.0405 ** 2 * 4653, 0.0495 ** 2 * 4747],
    ["R ∥ R", 2326.5, 2373.5],
    ["-V", -15.18, -12.42],
    ["abs(V - 13.8 V)", 0, 1.38],
    ["(V - 13.8 V)^2", 0, 1.38 ** 2],
    ["max(V; 14 V)", 14, 15.18],
    ["Ta + 5 W * 8 K/W", 55, 75],
    ["Ta - Ta", 0, 0],
    ["V * I ± 10 %", 12.42 * 0.0405 * 0.9, 15.18 * 0.0495 * 1.1],
    ["12 V ± 0.5 V", 11.5, 12.5],
    ["-12 V ± 5 %", -12.6, -11.4],
    ["25 °C ± 5 °C", 20, 30],
    ["55 % ± 5 %", 0.5, 0.6],
    ["0 V ± 50 mV", -0.05, 0.05],
    ["5 V ± 100 %", 0, 10],
  ])("%s lies between %d and %d", (text, min, max) => {
    const value = computed(text, RAILS);
    expect(value.min).toBeCloseTo(min, 9);
    expect(value.max).toBeCloseTo(max, 9);
  });

  test("an input counts once, also through other figures", () => {
    const chain: Definitions = { ...RAILS, half: "V / 2", twice: "half * 4", back: "twice / 2" };
    expect(computed("back - V", chain)).toMatchObject({ nominal: 0, min: 0, max: 0 });
  });

  test("two inputs with the same limits are two inputs", () => {
    const two: Definitions = { a: "10 V ± 1 V", b: "10 V ± 1 V" };
    expect(computed("a - b", two)).toMatchObject({ nominal: 0, min: -2, max: 2 });
    expect(computed("1R8J - 1R8J").max).toBeCloseTo(0.18, 9);
  });

  test("a divisor that cannot be zero is told from one that can", () => {
    expect(computed("1 V / (V - V + 1 V)", RAILS).min).toBe(1);
    expect(computed("1 V / (V^2 - 20 V * V + 101 V^2)", RAILS).max).toBeGreaterThan(0.05);
    expect(problemOf("1 V / (V - 13 V)", RAILS)).toContain(
      'form "/": The divisor can be zero: with tolerances it lies between −0.58\u00a0V and 2.18\u00a0V',
    );
  });

  test("of a value in the middle of its range", () => {
    const value = computed("x * (10 V - x)", { x: "4 V ± 50 %" });
    expect(value.max).toBeGreaterThanOrEqual(25);
    expect(value.max).toBeLessThan(25.00001);
    expect(value.min).toBeCloseTo(16, 9);
  });

  test("follow the trend that a formula states", () => {
    const functions: FormulaFunctions = new Map([
      ["drop", formulaOf("falls", (x) => 1 / x)],
      ["hump", formulaOf("either", (x) => 100 - (x - 13) ** 2)],
    ]);
    const drop = computed("drop(V)", RAILS, functions);
    expect([drop.min * 15.18, drop.max * 12.42]).toEqual([expect.closeTo(1), expect.closeTo(1)]);
    const hump = computed("hump(V)", RAILS, functions);
    expect(hump.max).toBeCloseTo(100, 9);
    expect(hump.min).toBeCloseTo(100 - 2.18 ** 2, 6);
    expect(problemOf("drop(0 V)", {}, functions)).toContain("no value for these arguments");
  });
});

function formulaOf(trend: "falls" | "either", compute: (x: number) => number) {
  const parameters = [{ name: "x", unit: "V", trend }];
  const range = "above zero";
  return {
    name: "f",
    parameters,
    unit: "1",
    range,
    compute: ([x]: readonly (number | string)[]) => {
      const result = compute(x as number);
      return Number.isFinite(result) ? result : Number.NaN;
    },
  };
}

describe("units that do not agree are told on their operator", () => {
  test.each([
    ["10 V + 3 A", 'unit "+": V and A cannot be added'],
    ["10 V - 3", 'unit "-": V and a plain number cannot be subtracted'],
    ["(V * I) + R", 'unit "+": W and Ω cannot be added'],
    ["V + 10 %", 'unit "+": A percentage cannot be added here'],
    ["V ∥ R", 'unit "∥": V and Ω cannot be put in parallel'],
    ["Ta + 20 °C", 'unit "+": Two temperatures in °C cannot be added'],
    ["20 K - Ta", 'unit "-": A temperature in °C cannot be taken from'],
    ["Ta * 2", 'unit "*": A temperature in °C is a point'],
    ["-Ta", 'unit "-Ta": A temperature in °C is a point'],
    ["Ta ∥ 20 °C", 'unit "∥": A temperature in °C is a point'],
    ["Ta ^ 2", 'unit "^": A temperature in °C is a point'],
    ["2 ^ Ta", 'unit "^": A temperature in °C is a point'],
    ["25 °C ± (Ta + 1 K)", 'form "Ta + 1 K": A tolerance is a fixed amount'],
    ["25 °C ± (20 °C + 1 K)", 'unit "20 °C + 1 K": A tolerance is a difference'],
    ["min(Ta; 20 K)", 'unit "min(Ta; 20 K)": °C and K cannot be compared'],
    ["2^V", 'unit "^": An exponent is a plain number, and this one is in V'],
    ["V^(R / 1 kΩ)", 'unit "^": A quantity with a unit needs an exponent without tolerance'],
    ["ln(V)", 'unit "ln(V)": ln takes a plain number, and V is given'],
    ["sqrt(Ta)", 'unit "sqrt(Ta)": A temperature'],
    ["5 V ± 2 A", 'unit "2 A": The value is in V, but its tolerance in A'],
    ["5 V ± 2", 'unit "2": The tolerance has no unit'],
    ["25 °C ± 5 %", 'unit "5 %": A share of a temperature'],
    ["0 V ± 5 %", 'form "5 %": A share of nothing is nothing'],
  ])("%s", (text, expected) => {
    expect(problemOf(text, RAILS)).toContain(expected);
  });
});

describe("what has no value is told, and never a number", () => {
  test.each([
    ["1 / 0", 'form "/": This divides by zero'],
    ["0 / 0", 'form "/": This divides by zero'],
    ["0^-1", 'form "^": This divides by zero'],
    ["1 V ∥ -1 V", 'form "∥": '],
    ["sqrt(-1 V * 1 V)", 'form "sqrt(-1 V * 1 V)": The root of a negative'],
    ["sqrt(V - 13 V)", "can be negative: with tolerances it lies between"],
    ["ln(0)", 'form "ln(0)": The logarithm'],
    ["(-2)^0.5", 'form "^": A power'],
    ["exp(1000)", "too large for a number"],
    ["1e300 * 1e300", 'form "*": The result is too large'],
    ["(1e300)^2", 'form "^": The result is too large'],
    ["5 V ± 120 %", 'form "120 %": A tolerance above 100 %'],
    ["5 V ± V", 'form "V": A tolerance is a fixed amount'],
    ["5 V ± -5 %", 'form "-5 %": A tolerance is not below zero'],
    ["5 V ±", 'form "": A value or a name is missing'],
    ["1e308 V ± 100 %", "too large for a number"],
  ])("%s", (text, expected) => {
    expect(problemOf(text, RAILS)).toContain(expected);
  });

  test("whatever is put together", () => {
    const atom = fc.constantFrom("0", "1", "-1", "1e300", "1e-300", "V", "x", "(V - V)", "pi");
    const text = fc.letrec<{ sum: string }>((tie) => ({
      sum: fc.oneof(
        { depthSize: "small" },
        atom,
        fc
          .tuple(tie("sum"), fc.constantFrom("+", "-", "*", "/", "^", "∥"), tie("sum"))
          .map(([a, sign, b]) => `(${a} ${sign} ${b})`),
        fc
          .tuple(fc.constantFrom("sqrt", "abs", "ln", "exp", "sin", "cos"), tie("sum"))
          .map(([name, a]) => `${name}(${a})`),
      ),
    })).sum;
    fc.assert(
      fc.property(text, (written) => {
        fc.pre(written.length < 500);
        const { value, problem } = sum(written, { V: "2 ± 50 %", x: "0 ± 1" });
        expect(value === undefined).toBe(problem !== undefined);
        if (!value) return;
        for (const figure of [value.nominal, value.min, value.max]) {
          expect(Number.isFinite(figure)).toBe(true);
        }
        expect(value.min).toBeLessThanOrEqual(value.nominal);
        expect(value.nominal).toBeLessThanOrEqual(value.max);
      }),
      { numRuns: 5000, examples: [["(pi / V) ∥ 1e-300"]] },
    );
  });
});

describe("root sum square", () => {
  test("of independent inputs is the root of the summed squares", () => {
    // Three resistors of 100 Ω ± 5 % in series: 300 Ω ± √3 · 5 Ω.
    const series: Definitions = { a: "100 Ω ± 5 %", b: "100 Ω ± 5 %", c: "100 Ω ± 5 %" };
    const { low, high } = rootSumSquare(computed("a + b + c", series).node);
    expect(low).toBeCloseTo(300 - 5 * Math.sqrt(3), 9);
    expect(high).toBeCloseTo(300 + 5 * Math.sqrt(3), 9);
  });

  test("never lies outside the worst case of a sum or product", () => {
    const value = computed("V * I + V^2 / R", RAILS);
    const { low, high } = rootSumSquare(value.node);
    expect(low).toBeGreaterThan(value.min);
    expect(high).toBeLessThan(value.max);
  });

  test("of one input is its worst case", () => {
    const value = computed("V^2", RAILS);
    expect(rootSumSquare(value.node)).toEqual({ low: value.min, high: value.max });
  });
});

// The SI brochure (BIPM, 9th edition), 2.3.4 and table 4: 0 °C is 273.15 K, an angle a plain number.
test.each([
  ["25 °C ± 10 K", [298.15, 288.15, 308.15, "K"]],
  ["25 °C - 20 °C", [5, 5, 5, "K"]],
  ["55 % ± 5 %", [0.55, 0.5, 0.6, "1"]],
  ["180 °", [Math.PI, Math.PI, Math.PI, "1"]],
  ["12 VA", [12, 12, 12, "W"]],
  ["5 kgf·cm", [0.4903325, 0.4903325, 0.4903325, "N·m"]],
])("programs are given %s in coherent units", (text, [nominal, min, max, unit]) => {
  const value = coherentValue(computed(text));
  expect(value.unit).toBe(unit);
  expect(value.nominal).toBeCloseTo(nominal as number, 9);
  expect(value.min).toBeCloseTo(min as number, 9);
  expect(value.max).toBeCloseTo(max as number, 9);
});
