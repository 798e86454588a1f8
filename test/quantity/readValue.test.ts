import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  readRating,
  readTolerance,
  readValue,
  sameValue,
} from "../../server/src/quantity/readValue.ts";
import type { Quantity, Unit, ValueReading } from "../../server/src/quantity/value.ts";

function read(text: string, letters?: string): Omit<ValueReading, "rest"> & { rest?: string } {
  const { rest, ...reading } = readValue(text, letters);
  return rest === "" ? reading : { ...reading, rest };
}

const q = (amount: number, unit: Unit): Quantity => ({ amount, unit });

describe("letter-and-digit codes", () => {
  // IEC 60062:2016, examples as the encyclopaedia article "RKM code" and notes on the standard
  // give them; those marked M from memory of its clause 4.
  test.each([
    ["R47", 0.47],
    ["4R7", 4.7],
    ["470R", 470],
    ["4K7", 4700],
    ["4k7", 4700],
    ["47K", 47e3],
    ["47K3", 47.3e3],
    ["470K", 470e3],
    ["4M7", 4.7e6],
    ["2R2", 2.2],
    ["2K2", 2200],
    ["1M0", 1e6],
    ["2K21", 2210],
    ["0R0", 0],
    ["1G0", 1e9], // M
  ])("%s is a resistor of %d Ω", (text, ohm) => {
    expect(read(text, "R")).toEqual({ value: q(ohm, "Ω") });
  });

  test.each([
    ["p33", 0.33e-12], // M, as all of the list but 4n7
    ["3p3", 3.3e-12],
    ["33p", 33e-12],
    ["n33", 330e-12],
    ["3n3", 3.3e-9],
    ["4n7", 4.7e-9],
    ["33n", 33e-9],
    ["µ33", 330e-9],
    ["3µ3", 3.3e-6],
    ["4u7", 4.7e-6], // common practice: u for µ
  ])("%s is a capacitor of %d F", (text, farad) => {
    const { value, ...other } = read(text, "C");
    expect(other).toEqual({});
    expect(value?.unit).toBe("F");
    expect(value?.amount).toBeCloseTo(farad, 20);
  });

  test("4R7 on an inductor is 4.7 µH", () => {
    // Encyclopaedia article "RKM code": not standard, but in use.
    expect(read("4R7", "L")).toEqual({ value: q(4.7e-6, "H") });
  });

  test("a second letter is the tolerance", () => {
    // Worked exercise on BS 1852, the forerunner of IEC 60062.
    expect(read("1R8J", "R")).toEqual({ value: q(1.8, "Ω"), tolerance: "5 %" });
    expect(read("27KK", "R")).toEqual({ value: q(27e3, "Ω"), tolerance: "10 %" });
    // IEC 60062:2016 table of tolerance letters.
    expect(read("4K7B", "R").tolerance).toBe("0.1 %");
    expect(read("470RF", "R").tolerance).toBe("1 %");
    expect(read("4n7M", "C").tolerance).toBe("20 %");
  });

  test("public packages that get these wrong do not mislead us", () => {
    // npm resistor-data 1.1.1 reads R47 as 0 and 2R2 as 2; npm electro-grammar 1.3.0 reads R47 as
    // 47 Ω, "4,7k" as 47 kΩ, "1u5" as a resistor, and nothing in 4n7 and p33.
    expect(readValue("R47", "R").value).toEqual(q(0.47, "Ω"));
    expect(readValue("2R2", "R").value).toEqual(q(2.2, "Ω"));
    expect(readValue("4,7k", "R").value).toEqual(q(4700, "Ω"));
    expect(readValue("1u5", "C").value).toEqual(q(1.5e-6, "F"));
    expect(readValue("1u5").value).toEqual(q(1.5e-6, "F"));
  });
});

describe("figures on capacitors", () => {
  test.each([
    ["104", 100e-9], // several converters
    ["101", 100e-12], // the rule of 104, as the next three
    ["102", 1e-9],
    ["473", 47e-9],
    ["225", 2.2e-6],
    ["479", 4.7e-12], // EIA-198, from memory
  ])("%s is %d F", (text, farad) => {
    expect(readValue(text, "C").value?.amount).toBeCloseTo(farad, 20);
  });

  test("only capacitors have them", () => {
    expect(read("104", "R")).toEqual({ value: q(104, "Ω") });
    expect(read("104", "L")).toEqual({ rest: "104" });
    expect(read("104")).toEqual({ rest: "104" });
  });

  test("a letter behind them is the tolerance", () => {
    expect(read("104K 100 V", "C")).toEqual({
      value: q(100e-9, "F"),
      tolerance: "10 %",
      voltage: q(100, "V"),
    });
    expect(read("220J", "C")).toEqual({ value: q(22e-12, "F"), tolerance: "5 %" });
  });

  test("220 may be a mark or plain picofarad, so nothing is read", () => {
    expect(read("220", "C")).toEqual({ rest: "220" });
  });

  test("letters on small capacitors mean picofarad", () => {
    // Tolerance columns of KEMET, TDK and AVX: B 0.10, C 0.25, D 0.5 pF.
    expect(read("22 pF C", "C")).toEqual({ value: q(22e-12, "F"), tolerance: "0.25 pF" });
    expect(read("4p7D", "C").tolerance).toBe("0.5 pF");
    expect(read("22pF ±0.25pF", "C").tolerance).toBe("0.25 pF");
  });
});

describe("values as lists write them", () => {
  // The spellings are common practice, gathered from public parts lists.
  test.each<[string, string, ReturnType<typeof read>]>([
    ["R", "1,2k", { value: q(1200, "Ω") }],
    ["R", "10 kohm", { value: q(10e3, "Ω") }],
    ["R", "10 kΩ", { value: q(10e3, "Ω") }],
    ["R", "10 k\u2126", { value: q(10e3, "Ω") }],
    ["R", "10\u202fk\u03a9", { value: q(10e3, "Ω") }],
    ["R", "10\u202f000\u00a0Ω", { value: q(10e3, "Ω") }],
    ["R", "330 ohms", { value: q(330, "Ω") }],
    ["R", "10K", { value: q(10e3, "Ω") }],
    ["R", "0.01R", { value: q(0.01, "Ω") }],
    ["R", "1 Meg", { value: q(1e6, "Ω") }],
    ["R", "604", { value: q(604, "Ω") }],
    ["R", "0", { value: q(0, "Ω") }],
    ["R", "4k7 1% 0.25W", { value: q(4700, "Ω"), tolerance: "1 %", power: q(0.25, "W") }],
    ["R", "820k 0.25w 200v", { value: q(820e3, "Ω"), power: q(0.25, "W"), voltage: q(200, "V") }],
    ["R", "15k 1W", { value: q(15e3, "Ω"), power: q(1, "W") }],
    ["R", "820 1/4w", { value: q(820, "Ω"), power: q(0.25, "W") }],
    ["R", "10k, 1%, ¼ W", { value: q(10e3, "Ω"), tolerance: "1 %", power: q(0.25, "W") }],
    ["R", "0.05 1w", { value: q(0.05, "Ω"), power: q(1, "W") }],
    ["R", "10kΩ 0603", { value: q(10e3, "Ω"), rest: "0603" }],
    ["R", "1 kΩ (brown, black, red)", { value: q(1000, "Ω"), rest: "(brown, black, red)" }],
    ["R", "10k c.d.", { value: q(10e3, "Ω"), rest: "c.d." }],
    ["R", "A1M", { value: q(1e6, "Ω"), rest: "A" }],
    ["R", "B10k", { value: q(10e3, "Ω"), rest: "B" }],
    ["R", "10kB", { value: q(10e3, "Ω"), rest: "B" }],
    ["RV", "100k lin", { value: q(100e3, "Ω"), rest: "lin" }],
    ["R", "4.7 kilohm", { value: q(4700, "Ω") }],
    ["R", "2 Megohms", { value: q(2e6, "Ω") }],
    ["R", "470E", { value: q(470, "Ω") }],
    ["R", "10mR", { value: q(0.01, "Ω") }],
    ["R", "4k7 0W25", { value: q(4700, "Ω"), power: q(0.25, "W") }],
    ["R", "10k-1%", { value: q(10e3, "Ω"), tolerance: "1 %" }],
    ["R", "10k (1%)", { value: q(10e3, "Ω"), tolerance: "1 %" }],
    ["RN", "8x10k", { value: q(10e3, "Ω"), rest: "8x" }],
    ["R", "+10k ±0,5 %", { value: q(10e3, "Ω"), tolerance: "0.5 %" }],
    ["C", "100nF", { value: q(100e-9, "F") }],
    ["C", "100 nF", { value: q(100e-9, "F") }],
    ["C", "100\u00a0nF", { value: q(100e-9, "F") }],
    ["C", ".1uF", { value: q(0.1e-6, "F") }],
    ["C", "0.1uf", { value: q(0.1e-6, "F") }],
    ["C", "10 \u00b5F", { value: q(10e-6, "F") }],
    ["C", "10 \u03bcF", { value: q(10e-6, "F") }],
    ["C", "100uf x 10V", { value: q(100e-6, "F"), voltage: q(10, "V") }],
    ["C", "22p RM5", { value: q(22e-12, "F"), rest: "RM5" }],
    ["C", "10v 22uF", { value: q(22e-6, "F"), voltage: q(10, "V") }],
    ["C", "4.7u 50V", { value: q(4.7e-6, "F"), voltage: q(50, "V") }],
    ["C", "100u/6V3", { value: q(100e-6, "F"), voltage: q(6.3, "V") }],
    ["C", "100nf 50V 0603", { value: q(100e-9, "F"), voltage: q(50, "V"), rest: "0603" }],
    [
      "C",
      "470u +80/-20% 25V",
      { value: q(470e-6, "F"), tolerance: "+80/-20 %", voltage: q(25, "V") },
    ],
    ["C", "2.2 microfarads", { value: q(2.2e-6, "F") }],
    ["C", "100 mmfd", { value: q(100e-12, "F") }],
    ["C", "100nF-50V", { value: q(100e-9, "F"), voltage: q(50, "V") }],
    ["L", "56\u00a0uH", { value: q(56e-6, "H") }],
    ["Y", "16MHz", { value: q(16e6, "Hz") }],
    ["X", "12 MHz", { value: q(12e6, "Hz") }],
    ["Q", "1.8432MHz", { value: q(1.8432e6, "Hz") }],
    ["Y", "32_768KHZ", { value: q(32768, "Hz") }],
    ["Y", "16MHz 18pF", { value: q(16e6, "Hz"), rest: "18pF" }],
    ["FB", "100R @ 100MHz", { value: q(100, "Ω"), rest: "@ 100MHz" }],
    ["D", "5v1", { value: q(5.1, "V") }],
    ["D", "3.3V", { value: q(3.3, "V") }],
    ["D", "1N4007 1000V", { voltage: q(1000, "V"), rest: "1N4007" }],
    ["F", "PTC, 600 mA, 6V", { value: q(0.6, "A"), voltage: q(6, "V"), rest: "PTC" }],
    ["F", "T3.15A 250V", { value: q(3.15, "A"), voltage: q(250, "V"), rest: "T" }],
    ["F", "500mAT", { value: q(0.5, "A"), rest: "T" }],
    ["BT", "9 V", { value: q(9, "V") }],
  ])("%s: %s", (letters, text, expected) => {
    expect(read(text, letters)).toEqual(expected);
  });

  test("a value with its unit is read whatever the class", () => {
    expect(readValue("1kΩ 0603", "C").value).toEqual(q(1000, "Ω"));
    expect(readValue("100nF", "R").value).toEqual(q(100e-9, "F"));
  });

  test("without a class the usual spelling decides, and volts are a rating", () => {
    expect(read("4k7")).toEqual({ value: q(4700, "Ω") });
    expect(read("100n 50V")).toEqual({ value: q(100e-9, "F"), voltage: q(50, "V") });
    expect(read("R47")).toEqual({ rest: "R47" });
  });
});

describe("what is no value", () => {
  test.each([
    ["D", "1N4148"],
    ["Q", "2N3904"],
    ["Q", "BC547"],
    ["U", "74HC595"],
    ["U", "4050"],
    ["IC", "LM7805"],
    ["U", "1117 3.3V"],
    ["D", "LM4040-5V"],
    ["R", "CH0402-50RGFTA"],
    ["RV", "3296W-1-103"],
    ["R", "4E7"],
    ["R", "R-US_R0603"],
    ["C", "NFM21PC475B1A3D"],
    ["J", "Conn_01x07"],
    ["R", "DNI"],
    [undefined, "2N3904"],
    [undefined, "1N4148"],
    [undefined, "E24"],
    [undefined, "2N3055"],
    ["R", ""],
  ])("%s: %s", (letters, text) => {
    expect(read(text, letters)).toEqual(text === "" ? {} : { rest: text });
  });

  test.each([
    ["1m of a resistor is written for milliohm and megohm", "R", "1m"],
    ["10m too", "R", "10m"],
    ["a comma before three figures is a decimal or a thousand", "R", "4,700"],
    ["so is a point", "C", "2.200uF"],
    ["a plain space may part two figures", "C", "10 000 µF"],
    ["either value may be fitted", "R", "10k or 12k"],
    ["either value may be fitted", "R", "10k/12k"],
    ["a trimmer has a range", "CT", "6 – 30 pF"],
    ["a trimmer has a range", "CT", "5 pF to 60 pF"],
    ["a bare number on a capacitor has no unit", "C", "10"],
    ["0603 is a package", "R", "0603"],
  ])("%s", (_, letters, text) => {
    expect(readValue(text, letters).value).toBeUndefined();
  });

  test("milliohm written out is no riddle", () => {
    expect(readValue("10mΩ", "R").value).toEqual(q(0.01, "Ω"));
  });
});

describe("columns of their own", () => {
  test("a rating may lack its unit", () => {
    expect(readRating("63", "V")).toEqual(q(63, "V"));
    expect(readRating("6V3", "V")).toEqual(q(6.3, "V"));
    expect(readRating("0,25", "W")).toEqual(q(0.25, "W"));
    expect(readRating("1/4 W", "W")).toEqual(q(0.25, "W"));
    expect(readRating("1/4", "W")).toEqual(q(0.25, "W"));
    expect(readRating("¼", "W")).toEqual(q(0.25, "W"));
    expect(readRating("500 mA", "A")).toEqual(q(0.5, "A"));
    expect(readRating("n/a", "V")).toBeUndefined();
    expect(readRating("63 V", "W")).toBeUndefined();
  });

  test("a tolerance may be a figure, a text or a letter", () => {
    expect(readTolerance("5")).toBe("5 %");
    expect(readTolerance("± 0,5 %")).toBe("0.5 %");
    expect(readTolerance("J")).toBe("5 %");
    expect(readTolerance("-20%/+80%")).toBe("+80/-20 %");
    expect(readTolerance("-20...+80%")).toBe("+80/-20 %");
    expect(readTolerance("+80 -20 %")).toBe("+80/-20 %");
    expect(readTolerance("±0.25p")).toBe("0.25 pF");
    expect(readTolerance("yes")).toBeUndefined();
  });
});

describe("two values are the same", () => {
  test("whatever prefix they were written with", () => {
    const same = (a: string, b: string, letters: string) =>
      sameValue(readValue(a, letters).value!, readValue(b, letters).value!);
    expect(same("4k7", "4.7 kΩ", "R")).toBe(true);
    expect(same("4k7", "4,7k", "R")).toBe(true);
    expect(same("100n", "0.1 µF", "C")).toBe(true);
    expect(same("100n", "104", "C")).toBe(true);
    expect(same("0R0", "0", "R")).toBe(true);
    // Neighbours in E192 (IEC 60063).
    expect(same("1.00k", "1.01k", "R")).toBe(false);
    expect(sameValue(q(1, "V"), q(1, "A"))).toBe(false);
  });
});

describe("hostile text", () => {
  const pieces = [
    "4k7",
    "1%",
    "+",
    "-",
    "/",
    " ",
    "9",
    ",",
    ".",
    "'",
    "R",
    "µ",
    "Ω",
    "±",
    "V",
    "1/",
    "x",
  ];
  const hostile = fc.oneof(
    fc.string({ unit: "binary", maxLength: 300 }),
    fc
      .array(fc.constantFrom(...pieces), { maxLength: 40 })
      .chain((list) => fc.integer({ min: 1, max: 3000 }).map((n) => list.join("").repeat(n))),
  );

  test("is never thrown at and gives finite values", () => {
    const letters = fc.constantFrom("R", "C", "L", "D", "U", "Y", "F", undefined);
    fc.assert(
      fc.property(hostile, letters, (text, kind) => {
        const { value, rest } = readValue(text, kind);
        if (value) expect(Number.isFinite(value.amount)).toBe(true);
        expect(rest.length).toBeLessThanOrEqual(text.length);
      }),
      { numRuns: 500 },
    );
  });

  test.each([...pieces, "4k7 , ", "1/4 ", "10 000 "])(
    "%j a hundred thousand times takes no time",
    (piece) => {
      const text = `4k7 ${piece.repeat(100_000)}x`;
      const began = performance.now();
      readValue(text, "R");
      readRating(text, "V");
      readTolerance(text);
      // Linear work takes a few milliseconds, quadratic work minutes.
      expect(performance.now() - began).toBeLessThan(10_000);
    },
  );
});
