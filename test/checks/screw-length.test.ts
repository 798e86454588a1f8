import { describe, expect, test } from "vitest";
import { kit, messages } from "./kit.ts";

const CODE = "screw-length";
const LIST = `Designator,Quantity,Value,Package,Description
"Q1, Q2",2,IRF510,TO-220,MOSFET
HS1,1,8 K/W,,"heat sink, base 3 mm thick"
PCB1,1,board,,"1.6 mm FR4"
,9,M3x4,,pan head screw
,9,M3x6,,pan head screw
,9,M3x8,,pan head screw
,9,M3x10,,pan head screw
,9,4-40 x 1/4",,pan head screw
,9,M3 nut,,
,9,M3 washer,,
,9,insulating bush,,"for M3 and TO-220, flange 1 mm"
,9,standoff,,"M3, 8 mm, steel"
,1,rear panel,,"aluminium, drilled"
,1,thick plate,,"aluminium, 4 mm thick"
,1,heat spreader,,"aluminium 50 × 40 × 20 mm"`;

function found(mark: string): Promise<string[]> {
  return messages(
    kit(`## Sink\n\n1. Screw it together. ${mark}`, LIST, "off-board: [HS1]\n"),
    CODE,
  );
}

describe("A screw is too short", () => {
  // Common practice: wall 3 mm, tab 1.2 to 1.3 mm, two washers, nut and two pitches ask for M3 × 10.
  test("for wall, tab, washers and nut", async () => {
    expect(await found("[Q1, HS1, 1 × M3x8, 2 × M3 washer, 1 × M3 nut]")).toEqual([
      "warning: M3x8 is 8\u00a0mm long, but M3 washer 0.5\u00a0mm, M3 washer 0.5\u00a0mm, Q1 1.2\u00a0mm, HS1 3\u00a0mm and nut 2.4\u00a0mm make 7.6\u00a0mm. A pitch or two must stand out of the nut, or it does not hold. Take one of 10\u00a0mm or longer.",
    ]);
  });

  test.each([
    "[Q1, HS1, 1 × M3x6, 1 × M3 nut]",
    "[Q1, Q2, HS1, 2 × M3x6, 2 × M3 nut]",
    "[1 × thick plate, 1 × M3x6, 1 × M3 nut]",
    "[Q1, HS1, 1 × insulating bush] [1 × M3x8, 1 × M3 nut]",
    // One diameter of thread must hold in steel.
    "[1 × thick plate, 1 × M3x6, 1 × standoff]",
    "[1 × thick plate, 1 × M3x4]",
  ])("%s", async (mark) => {
    expect(await found(mark)).toHaveLength(1);
  });
});

describe("A screw is long enough", () => {
  test.each([
    "[Q1, HS1, 1 × M3x10, 2 × M3 washer, 1 × M3 nut]",
    "[Q1, Q2, HS1, 2 × M3x8, 2 × M3 nut]",
    "[PCB1, 4 × M3x6, 4 × standoff]",
    "[1 × thick plate, 1 × M3x8, 1 × M3 nut]",
    // Not known how thick.
    "[1 × rear panel, 1 × M3x4, 1 × M3 nut]",
    "[1 × heat spreader, 1 × M3x4]",
    // No height of such nuts is known here.
    '[1 × thick plate, 1 × 4-40 x 1/4", 1 × M3 nut]',
    // Which of two kinds holds what cannot be told.
    "[1 × thick plate, 1 × M3x6, 1 × M3x8, 1 × M3 nut]",
    "[try: 1 × thick plate, 1 × M3x4, 1 × M3 nut]",
  ])("%s", async (mark) => {
    expect(await found(mark)).toEqual([]);
  });
});
