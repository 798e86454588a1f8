import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readValue } from "../../../server/src/quantity/readValue.ts";
import {
  eia96,
  figureCode,
  readEia96,
  readFigureCode,
} from "../../../server/src/trade/marking/figureCode.ts";
import { letterCode } from "../../../server/src/trade/marking/letterCode.ts";
import { readMark } from "../../../server/src/trade/marking/readMark.ts";
import { seriesValues } from "../../../server/src/trade/resistors/preferred.ts";

describe("The letter-and-digit code is written", () => {
  // IEC 60062, examples of resistance values in an encyclopaedia's table; capacitors by its rule.
  test.each([
    [0.47, "Ω", "R47"],
    [4.7, "Ω", "4R7"],
    [470, "Ω", "470R"],
    [4700, "Ω", "4K7"],
    [47_000, "Ω", "47K"],
    [47_300, "Ω", "47K3"],
    [470_000, "Ω", "470K"],
    [4.7e6, "Ω", "4M7"],
    [1e6, "Ω", "1M0"],
    [0.33e-12, "F", "p33"],
    [3.3e-12, "F", "3p3"],
    [33e-12, "F", "33p"],
    [4.7e-9, "F", "4n7"],
    [3.3e-6, "F", "3µ3"],
    [4.7e-6, "H", "4µ7"],
  ] as const)("%d %s: %s", (amount, unit, code) => {
    expect(letterCode(amount, unit)).toBe(code);
  });

  test("and read again gives the value", () => {
    fc.assert(
      fc.property(fc.nat(95), fc.integer({ min: 0, max: 7 }), (place, decade) => {
        const ohms = Number(`${seriesValues("E96")![place]}e${decade}`);
        expect(readValue(letterCode(ohms, "Ω")!, "R").value?.amount).toBeCloseTo(ohms, 6);
      }),
    );
  });

  test("only for values that it reaches", () => {
    expect(letterCode(0, "Ω")).toBeUndefined();
    expect(letterCode(1.23456, "Ω")).toBeUndefined();
    expect(letterCode(0.01, "Ω")).toBe("R01");
  });
});

describe("Marks of figures", () => {
  // 103, 1002 and 622 on chip resistors: code comments on SMD codes; 104 in several converters.
  test("are read", () => {
    expect(readFigureCode("103")).toBe(10_000);
    expect(readFigureCode("1002")).toBe(10_000);
    expect(readFigureCode("622")).toBe(6200);
    expect(readFigureCode("104")).toBe(100_000);
    expect(readFigureCode("012")).toBeUndefined();
    expect(readFigureCode("12")).toBeUndefined();
  });

  test("are written", () => {
    expect(figureCode(4700, 3)).toBe("472");
    expect(figureCode(4700, 4)).toBe("4701");
    expect(figureCode(10, 3)).toBe("100");
    expect(figureCode(4.7, 3)).toBeUndefined();
    expect(figureCode(4750, 3)).toBeUndefined();
    expect(figureCode(100_000, 3)).toBe("104");
  });
});

describe("EIA-96 marks", () => {
  // 01C: the readme of a converter; the rest computed from the rule and E96.
  test.each([
    ["01C", 10_000],
    ["51D", 332_000],
    ["01A", 100],
    ["66X", 47.5],
    ["10X", 12.4],
    ["68X", 49.9],
    ["24C", 17_400],
    ["85B", 7500],
    ["30B", 2000],
    ["96F", 97.6e6],
    ["47A", 301],
    ["01Y", 1],
  ])("%s is %d Ω", (mark, ohms) => {
    expect(readEia96(mark)).toBe(ohms);
    expect(eia96(ohms)).toBe(mark);
  });

  // R, S and H as variants are from memory; one table has G and H for 10⁶ and 10⁷, which
  // contradicts H for 10.
  test("are read in their variants, and not beyond", () => {
    expect(readEia96("01R")).toBe(1);
    expect(readEia96("01S")).toBe(10);
    expect(readEia96("01H")).toBe(1000);
    expect(readEia96("01G")).toBeUndefined();
    expect(readEia96("97A")).toBeUndefined();
    expect(readEia96("00A")).toBeUndefined();
    expect(eia96(4700)).toBeUndefined();
  });
});

describe("A mark on a part may mean", () => {
  test.each([
    ["104", "capacitor", 100e-9],
    ["181", "capacitor", 180e-12],
    ["104K", "capacitor", 100e-9],
    ["479", "capacitor", 4.7e-12],
    ["12", "capacitor", 12e-12],
    ["4.7", "capacitor", 4.7e-12],
    ["4n7", "capacitor", 4.7e-9],
    ["220", "capacitor", 22e-12],
    ["220", "capacitor", 220e-12],
    ["220", "capacitor", 220e-6],
    ["103", "resistor", 10_000],
    ["1002", "resistor", 10_000],
    ["470", "resistor", 47],
    ["470", "resistor", 470],
    ["01C", "resistor", 10_000],
    ["R47", "resistor", 0.47],
    ["27KK", "resistor", 27_000],
    ["101", "inductor", 100e-6],
    ["4R7", "inductor", 4.7e-6],
    ["10", "inductor", 10e-6],
  ] as const)("%s on a %s: %d", (mark, kind, amount) => {
    const meant = readMark(mark, kind);
    expect(meant.some((one) => Math.abs(one / amount - 1) < 1e-9)).toBe(true);
  });

  test.each(["A", "+", "12 V", "left", "C12", "LM386", "BC547", ""])("nothing: %s", (mark) => {
    for (const kind of ["resistor", "capacitor", "inductor"] as const) {
      expect(readMark(mark, kind)).toEqual([]);
    }
  });
});
