import { describe, expect, test } from "vitest";
import { washerBore } from "../../../server/src/trade/fasteners/hardware.ts";
import {
  clearanceHole,
  FITS,
  holeClass,
  readFit,
  tappingDrill,
} from "../../../server/src/trade/fasteners/holes.ts";
import { THREAD_NAMES, threadIn } from "../../../server/src/trade/fasteners/threads.ts";

const thread = (name: string) => threadIn(name)!;
const mm = (metres: number) => Number((metres * 1000).toFixed(6));

describe("Clearance holes", () => {
  // ISO 273:1979, read in FreeCAD's FeatureHole.cpp (which names it) and a fastener vendor's table.
  test.each([
    ["M1.6", 1.7, 1.8, 2],
    ["M2", 2.2, 2.4, 2.6],
    ["M2.5", 2.7, 2.9, 3.1],
    ["M3", 3.2, 3.4, 3.6],
    ["M3.5", 3.7, 3.9, 4.2],
    ["M4", 4.3, 4.5, 4.8],
    ["M5", 5.3, 5.5, 5.8],
    ["M6", 6.4, 6.6, 7],
    ["M8", 8.4, 9, 10],
    ["M10", 10.5, 11, 12],
    ["M12", 13, 13.5, 14.5],
    // ASME B18.2.8 in mm, read in the same file.
    ["2-56", 2.4, 2.6, 2.9],
    ["4-40", 3, 3.3, 3.7],
    ["6-32", 3.9, 4.3, 4.7],
    ["8-32", 4.6, 5, 5.4],
    ["10-24", 5.2, 5.6, 6],
    ["1/4-20", 6.8, 7.1, 7.5],
  ])("of %s are %d, %d and %d mm", (name, ...expected) => {
    expect(FITS.map((fit) => mm(clearanceHole(thread(name), fit)))).toEqual(expected);
  });

  // ISO 7089 washers have the fine bore: two standards that must agree.
  test("of the fine class are the bores of plain washers", () => {
    const washers = THREAD_NAMES.map(thread).filter((one) => !Number.isNaN(washerBore(one)));
    expect(washers).toHaveLength(10);
    for (const one of washers) expect(washerBore(one)).toBe(clearanceHole(one, "fine"));
  });

  test("are called close, normal and loose by ASME B18.2.8", () => {
    expect(["close", "Normal", "loose", "coarse", "tight"].map(readFit)).toEqual([
      "fine",
      "medium",
      "coarse",
      "coarse",
      undefined,
    ]);
  });
});

describe("The class of a hole", () => {
  // ISO 273: the practice of drilling 3.5 mm for M3 gives slack between medium and coarse.
  test.each([
    [3, "below fine"],
    [3.2, "fine"],
    [3.3, "between fine and medium"],
    [3.4, "medium"],
    [3.5, "between medium and coarse"],
    [3.6, "coarse"],
    [4, "above coarse"],
  ])("of %d mm for M3 is %s", (diameter, expected) => {
    expect(holeClass(thread("M3"), diameter / 1000)).toBe(expected);
  });
});

describe("Tapping drills", () => {
  // ISO 2306, read in FreeCAD's FeatureHole.cpp (which names it).
  test.each([
    ["M1.6", 1.25],
    ["M2", 1.6],
    ["M2.5", 2.05],
    ["M3", 2.5],
    ["M3.5", 2.9],
    ["M4", 3.3],
    ["M5", 4.2],
    ["M6", 5],
    ["M8", 6.8],
    ["M10", 8.5],
    ["M12", 10.2],
    ["4-40", 2.35],
    ["6-32", 2.85],
    ["8-32", 3.5],
    ["10-24", 3.9],
    ["1/4-20", 5.1],
  ])("of %s is %d mm", (name, expected) => {
    expect(mm(tappingDrill(thread(name)))).toBe(expected);
  });

  // The rule behind the table: diameter less pitch, rounded to a drill that is sold.
  test("are the diameter less the pitch, to 0.05 mm", () => {
    for (const one of THREAD_NAMES.filter((name) => name.startsWith("M")).map(thread)) {
      const rule = one.diameter - one.pitch;
      expect(Math.abs(tappingDrill(one) - rule)).toBeLessThanOrEqual(0.0501e-3);
    }
  });
});
