/** The grammar of expressions: what binds to what, exact spans, and what is said of faulty ones. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parseExpression } from "../../server/src/quantity/expression/parse.ts";
import type { Argument, Expression } from "../../server/src/quantity/expression/tree.ts";
import type { FormulaFunctions } from "../../server/src/quantity/functions.ts";
import { computed, problemOf } from "./sums.ts";

const functions: FormulaFunctions = new Map([
  [
    "hole",
    {
      name: "hole",
      parameters: [
        { name: "thread", unit: "word", trend: "either" },
        { name: "fit", unit: "word", trend: "either", default: "medium" },
        { name: "paint", unit: "m", trend: "rises", default: 0 },
      ],
      unit: "m",
      range: "M3 only",
      compute: ([thread, fit, paint]) =>
        thread === "M3" ? (fit === "fine" ? 3.2e-3 : 3.4e-3) + 2 * (paint as number) : Number.NaN,
    },
  ],
]);

function parse(text: string) {
  return parseExpression(text, { functions, isBoard: (name) => name === "relay" });
}

/** The tree with brackets round each operation, and each part as it stands in the text. */
function shape(text: string): string {
  const { expression, problem } = parse(text);
  if (!expression) throw new Error(problem.message);
  const at = ({ span }: Argument) => text.slice(span.start, span.end);
  const show = (one: Argument): string => {
    switch (one.kind) {
      case "number":
      case "name":
      case "word":
        return at(one);
      case "negation":
        return `(-${show(one.of)})`;
      case "operation": {
        const { operatorSpan, left, right } = one;
        return `(${show(left)} ${text.slice(operatorSpan.start, operatorSpan.end)} ${show(right)})`;
      }
      case "call":
        return `${text.slice(one.nameSpan.start, one.nameSpan.end)}[${one.args.map(show).join("|")}]`;
    }
  };
  return show(expression);
}

describe("signs bind as in mathematics", () => {
  test.each([
    ["a + b * c", "(a + (b * c))"],
    ["a - b - c", "((a - b) - c)"],
    ["a / b / c", "((a / b) / c)"],
    ["a / b * c", "((a / b) * c)"],
    ["(a + b) * c", "((a + b) * c)"],
    ["-a^2", "(-(a ^ 2))"],
    ["2^3^2", "(2 ^ (3 ^ 2))"],
    ["2^-3", "(2 ^ (-3))"],
    ["a²", "(a ² ²)"],
    ["VCC / R1 ∥ R2", "(VCC / (R1 ∥ R2))"],
    ["a × b ÷ c · d", "(((a × b) ÷ c) · d)"],
    ["a − b", "(a − b)"],
    ["10 V / 2 A", "(10 V / 2 A)"],
    ["2 V^2", "2 V^2"],
    ["(2 V)^2", "(2 V ^ 2)"],
    ["8 K/W * P", "(8 K/W * P)"],
    ["8 K / W", "(8 K / W)"],
    ["13.8 V/R1", "(13.8 V / R1)"],
    ["P(R50) / V(C15)", "(P(R50) / V(C15))"],
    ["torque( Q1 , Q2 )", "torque( Q1 , Q2 )"],
    ["P(relay/R50)", "P(relay/R50)"],
    ["relay/R1 + main/R1", "(relay/R1 + (main / R1))"],
    ["min(1 V; a + b)", "min[1 V|(a + b)]"],
    ["sqrt (2)", "sqrt[2]"],
    ["hole(M3; fine)", "hole[M3|fine]"],
    ["hole( M3 ;fine;1 µm * 2)", "hole[M3|fine|(1 µm * 2)]"],
    ["AWG 24", "AWG 24"],
    ["24 AWG", "24 AWG"],
    ["0.5 N m * 2", "(0.5 N m * 2)"],
    ["4k7 + R1", "(4k7 + R1)"],
    ["+5 V", "5 V"],
  ])("%s", (text, expected) => {
    expect(shape(text)).toBe(expected);
  });
});

describe("numbers are read", () => {
  test.each([
    ["13,8 V", 13.8],
    ["10 000 Ω", 10e3],
    ["10\u202f000 Ω", 10e3],
    ["10\u00a0000\u00a0Ω", 10e3],
    ["10\u2009000,5 Ω", 10000.5],
    ["1 000 000", 1e6],
    ["0,5", 0.5],
    [".5", 0.5],
    ["1.5e3 Ω", 1500],
    ["1.5e−3 A", 1.5e-3],
    ["-40 °C", -40],
    ["−40 °C", -40],
    // IEC 60062:2016, examples of its letter-and-digit code; the reader is that of the parts list.
    ["4k7", 4700],
    ["4K7", 4700],
    ["2R2", 2.2],
    ["1M0", 1e6],
    ["47K3", 47.3e3],
    ["10k", 10e3],
    ["3n3", 3.3e-9],
    ["4µ7", 4.7e-6],
    ["100n", 100e-9],
    ["4k7Ω", 4700],
  ])("%s", (text, amount) => {
    expect(computed(text).nominal).toBeCloseTo(amount, 12);
  });

  test("with a letter behind a code as its tolerance", () => {
    // IEC 60062:2016 table 3; worked exercise on BS 1852: 1R8J is 1.8 Ω ±5 %.
    expect(computed("1R8J")).toMatchObject({ nominal: 1.8, min: 1.71, max: 1.8900000000000001 });
    expect(computed("27KK").max).toBeCloseTo(29.7e3, 6);
  });

  test("with 10K as ten kelvins, since K is no prefix", () => {
    expect(computed("10K").unit).toBe("K");
  });
});

describe("faulty expressions", () => {
  test.each([
    ["", 'form "": A value or a name is missing'],
    ["2 +", 'form "+": A value or a name is missing at the end'],
    ["2 + * 3", 'form "*": A value or a name is missing before *'],
    ["(2 + 3", 'form "(2 + 3": A closing bracket is missing'],
    ["2 + 3)", 'form ")": This closing bracket has no opening one'],
    [
      "2 VCC",
      'form "VCC": VCC is no unit that can be computed with. If a product is meant, write 2 * VCC',
    ],
    ["VCC 2", 'form "2": 2 cannot stand here'],
    ["5 Volts", 'form "Volts": Volts is no unit that can be computed with. Did you mean V?'],
    ["4.7 KΩ", 'form "KΩ": KΩ is no unit that can be computed with. Did you mean kΩ?'],
    ["5 Vpp", 'form "Vpp": Vpp is no unit'],
    ["2 MO", 'form "MO": MO is no unit that can be computed with. Did you mean MΩ?'],
    ["10 kiloohm", "Did you mean kΩ?"],
    ["10 microfarad", "Did you mean µF?"],
    ["1 henry", "Did you mean H?"],
    ["5 in-lb", "Did you mean lbf·in?"],
    ["5 kgcm", "Did you mean kgf·cm?"],
    ["3 Zoll", "Did you mean in?"],
    ["5 KHZ", "Did you mean kHz?"],
    ["3 M", 'form "M": M is a prefix, and no unit follows it. Write MΩ or MHz.'],
    ["10 µ", "µ is a prefix, and no unit follows it. Write µF, µH or µA."],
    ["2 Vin", "If a product is meant, write 2 * Vin."],
    ["15 psi", "psi is no unit that can be computed with. If a product"],
    ["100 °F", 'form "°F": Temperatures are computed in °C. Take 32 off'],
    ["1.000,5 V", 'form "1.000,5": 1.000,5 has two separators'],
    ["1,234,567", 'form "1,234,567": 1,234,567 has two separators'],
    ["1e400", 'form "1e400": This number is too large'],
    ["1e400 V", 'form "1e400 V": This number is too large'],
    ["1e-400 V", 'form "1e-400 V": This number is too small'],
    ["min(1 V, 2 V)", 'form ",": A comma is a decimal comma here'],
    ["sqrt(1; 2)", 'form "sqrt(1; 2)": sqrt takes one argument, and 2 are given'],
    ["min()", 'form "min()": min takes 1 to 50 arguments, and none is given'],
    [
      "hole()",
      'form "hole()": hole takes 1 to 3 arguments, and none is given. Write hole(thread; fit; paint)',
    ],
    ["sqr((2))", 'name "sqr": There is no function sqr. Did you mean sqrt?'],
    ["dril(M3; fine)", 'name "dril": There is no function dril.'],
    ["P()", 'form "()": A name is missing in the brackets of P'],
    ["P(R1,)", 'form "(R1,)": A name is missing'],
    ["AWG", 'form "AWG": A wire gauge is a whole number'],
    ["AWG 2.5", 'form "AWG": A wire gauge is a whole number'],
    ["a = b", 'form "=": = cannot stand here'],
    ["#", "form"],
  ])("are told: %s", (text, expected) => {
    const definitions = { VCC: "5 V", a: "1", b: "1" };
    expect(problemOf(text, definitions, functions)).toContain(expected);
  });

  test("suggest what makes them right", () => {
    for (const [text, right] of [
      ["2 VCC", "2 * VCC"],
      ["5 Volts", "5 V"],
      ["4.7 KΩ", "4.7 kΩ"],
      ["min(1 V, 2 V)", "min(1 V; 2 V)"],
    ] as const) {
      const { suggestion } = parse(text).problem!;
      const { span, text: by } = suggestion!;
      expect(text.slice(0, span.start) + by + text.slice(span.end)).toBe(right);
      expect(parse(right).problem).toBeUndefined();
    }
  });

  test("nested deeper than anyone writes are refused, however deep", () => {
    const deep = (n: number) => `${"(".repeat(n)}1${")".repeat(n)}`;
    expect(computed(deep(40)).nominal).toBe(1);
    expect(problemOf(deep(240))).toContain("nested");
    expect(problemOf(deep(10_000))).toContain("longer than 500 characters");
    expect(problemOf("-".repeat(400))).toContain("nested");
    expect(problemOf(`2${"^2".repeat(200)}`)).toContain("nested");
    expect(problemOf("sqrt(".repeat(80))).toContain("nested");
  });

  test("of any kind are answered, with a span inside the text", () => {
    const word = fc.constantFrom(
      ..."+ - * / ^ ∥ ( ) ; , . 1 2.5 e3 4k7 V kΩ % °C AWG P(R1) sqrt( min( hole( M3 x ± = ² µ \u00a0 −".split(
        " ",
      ),
    );
    const text = fc.array(fc.oneof(word, fc.string({ maxLength: 2 })), { maxLength: 30 });
    fc.assert(
      fc.property(text, fc.constantFrom("", " "), (words, glue) => {
        const written = words.join(glue);
        const { expression, problem } = parse(written);
        const { span } = (expression ?? problem)! as Expression;
        expect(span.start).toBeGreaterThanOrEqual(0);
        expect(span.end).toBeLessThanOrEqual(Math.max(written.length, 0));
        expect(span.start).toBeLessThanOrEqual(span.end);
      }),
      { numRuns: 3000 },
    );
  });

  test("take no time, however they are nested", () => {
    const start = performance.now();
    for (const part of ["1 ", "((", "a(", "2^", "1,2", "µ", "min(1;", "N·m/", "- "]) {
      parse(part.repeat(500 / part.length).slice(0, 500));
    }
    // Trying each reading of each bracket would take years.
    expect(performance.now() - start).toBeLessThan(10_000);
  });
});

test("a formula takes words, defaults and numbers", () => {
  expect(computed("hole(M3)", {}, functions).nominal).toBeCloseTo(3.4e-3, 12);
  expect(computed("hole(M3; fine; 10 µm)", {}, functions).nominal).toBeCloseTo(3.22e-3, 12);
  expect(problemOf("hole(M99)", {}, functions)).toBe(
    'form "hole(M99)": The formula has no value for these arguments. Range: M3 only',
  );
  expect(problemOf("hole(M3; fine; 2 V)", {}, functions)).toContain(
    'unit "2 V": hole takes `paint` in m, and V is given',
  );
});
