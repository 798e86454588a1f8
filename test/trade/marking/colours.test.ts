import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  bandsFor,
  COLOURS,
  type Colour,
  readBands,
  valueBands,
} from "../../../server/src/trade/marking/colours.ts";
import {
  isPreferred,
  SERIES,
  seriesValues,
} from "../../../server/src/trade/resistors/preferred.ts";

const read = (words: string) => readBands(words.split(" ") as Colour[]);

describe("Colour bands are read", () => {
  // Worked examples of Lessons In Electric Circuits (Kuphaldt), reference volume, chapter 2.
  test.each([
    ["yellow violet orange gold", 47_000, 5],
    ["green red gold silver", 5.2, 10],
    ["white violet black", 97, 20],
    ["orange orange black brown violet", 3300, 0.1],
    ["brown green grey silver red", 1.58, 2],
    ["blue brown green silver blue", 6.15, 0.25],
    // A web chart after IEC 60062.
    ["brown black red gold", 1000, 5],
    ["yellow violet red gold", 4700, 5],
    ["red red orange gold", 22_000, 5],
    ["brown black black gold brown", 10, 1],
  ])("%s: %d Ω, %d %%", (bands, ohms, tolerance) => {
    expect(read(bands)).toEqual({ ohms, tolerances: [tolerance] });
  });

  // By the tables of IEC 60062:2016 as carried in several code tables: red is 50 ppm/K.
  test("with the temperature coefficient as a sixth", () => {
    expect(read("brown black black red brown red")).toEqual({
      ohms: 10_000,
      tolerances: [1],
      coefficient: 50,
    });
  });

  // Grey is 0.01 % (letter L) since the edition of 2016 and was 0.05 %; violet is 0.1 % in all but
  // one page; orange 0.05 % and yellow 0.02 % are new in 2016.
  test("with the tolerances of 2016, grey also as before", () => {
    const last = (colour: string) => read(`brown black black brown ${colour}`)?.tolerances;
    expect(last("grey")).toEqual([0.01, 0.05]);
    expect(last("violet")).toEqual([0.1]);
    expect(last("orange")).toEqual([0.05]);
    expect(last("yellow")).toEqual([0.02]);
    expect(last("white")).toBeUndefined();
    expect(last("black")).toBeUndefined();
  });

  // IEC 60062:2016: pink is 10⁻³.
  test("with pink as a thousandth", () => {
    expect(read("brown black black pink brown")?.ohms).toBe(0.1);
  });

  test("from their own end only: no figure is gold or silver", () => {
    expect(read("gold orange violet yellow")).toBeUndefined();
    expect(read("silver brown black red")).toBeUndefined();
    expect(read("brown black")).toBeUndefined();
    expect(read("brown black black brown brown red red")).toBeUndefined();
    expect(read("brown black black brown brown gold")).toBeUndefined();
  });

  // The first LIEC examples decode well and are no preferred values.
  test("whether or not the value is preferred", () => {
    expect(isPreferred(read("green red gold silver")!.ohms, "E24")).toBe(false);
    expect(isPreferred(read("white violet black")!.ohms, "E24")).toBe(false);
  });
});

describe("Colour bands are written", () => {
  test.each([
    [4700, 5, "yellow violet red gold"],
    [4700, 1, "yellow violet black brown brown"],
    [10, 1, "brown black black gold brown"],
    [1.58, 2, "brown green grey silver red"],
    [0.47, 5, "yellow violet silver gold"],
    // Three figures do not fit in two.
    [1580, 5, "brown green grey brown gold"],
    [0, 5, "black"],
  ])("%d Ω, %d %%: %s", (ohms, tolerance, bands) => {
    expect(bandsFor(ohms, tolerance)?.join(" ")).toBe(bands);
  });

  test("without a tolerance band where the tolerance is not known", () => {
    expect(bandsFor(4700)?.join(" ")).toBe("yellow violet black brown");
    expect(valueBands(4700, 2)?.join(" ")).toBe("yellow violet red");
  });

  test("only where they can be", () => {
    expect(bandsFor(4712, 1)).toBeUndefined();
    expect(bandsFor(1e13, 1)).toBeUndefined();
    expect(bandsFor(-1, 1)).toBeUndefined();
    expect(bandsFor(1000, 3)).toBeUndefined();
  });

  test("and read again give the value, for all preferred ones", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...SERIES),
        fc.nat(191),
        fc.integer({ min: 0, max: 6 }),
        fc.constantFrom(0.1, 0.5, 1, 2, 5, 10),
        (series, place, decade, tolerance) => {
          const values = seriesValues(series)!;
          const ohms = Number(`${values[place % values.length]}e${decade}`);
          const reading = readBands(bandsFor(ohms, tolerance)!);
          expect(reading?.ohms).toBeCloseTo(ohms, 9);
          expect(reading?.tolerances).toContain(tolerance);
        },
      ),
    );
    expect(COLOURS).toHaveLength(13);
  });
});
