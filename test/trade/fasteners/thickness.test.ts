import { describe, expect, test } from "vitest";
import { nextLength } from "../../../server/src/trade/fasteners/screwLength.ts";
import { packageThickness, thicknessIn } from "../../../server/src/trade/fasteners/thickness.ts";

const mm = (metres: number | undefined) =>
  metres === undefined ? undefined : Number((metres * 1000).toFixed(6));

// Ways in which parts lists give a thickness (common practice).
test.each([
  ["heat sink, black, 50 × 40 × 20 mm, base 3 mm thick", 3],
  ["1.6 mm FR4", 1.6],
  ["Platine, 1,6 mm stark", 1.6],
  ["plaque alu, 2 mm d'épaisseur", 2],
  ["plaat, 1,5 mm dik", 1.5],
  ["chapa, 2 mm de espesor", 2],
  ["aluminium, 1.5 mm", 1.5],
  ["2 mm aluminium", 2],
  ["for M3 and TO-220, flange 1 mm", 1],
  ["insulator for TO-220, 0.05 mm", 0.05],
  ["Glimmerscheibe 0,05 mm", 0.05],
  ["heat sink 50 × 40 × 20 mm aluminium", undefined],
  ["aluminium, drilled", undefined],
  ["circuit board, 140 × 80 mm", undefined],
])("%s: %s mm", (text, expected) => {
  expect(mm(thicknessIn(text))).toBe(expected);
});

// JEDEC outlines, from memory: a TO-220 tab is 1.2 to 1.4 mm thick, a TO-247 body 4.7 to 5.3 mm.
test("packages are at least so thick where the screw passes", () => {
  expect(mm(packageThickness("TO-220-3_Vertical"))).toBe(1.2);
  expect(mm(packageThickness("TO-220F"))).toBe(2.5);
  expect(mm(packageThickness("TO-247"))).toBe(4.7);
  expect(mm(packageThickness("TO-3P"))).toBe(4.7);
  expect(packageThickness("TO-92")).toBeUndefined();
});

// ISO 4762 lengths as read in the tables of FreeCAD's Fasteners workbench.
describe("The next length that is sold", () => {
  test.each([
    [8.7, 10],
    [8, 8],
    [7.1, 8],
    [13, 14],
    [17, 20],
  ])("above %d mm is %d mm", (length, expected) => {
    expect(mm(nextLength(length / 1000))).toBe(expected);
  });

  test("ends at 80 mm", () => {
    expect(nextLength(0.081)).toBeUndefined();
  });
});
