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

describe("The stack that the step states", () => {
  test("counts instead of what the list tells", async () => {
    expect(await found("[Q1, HS1, 1 × M3x10, 1 × M3 nut] {stack(M3x10) = 7.5 mm}")).toEqual([
      "warning: M3x10 is 10\u00a0mm long, but stack(M3x10) 7.5\u00a0mm and nut 2.4\u00a0mm make 9.9\u00a0mm. A pitch or two must stand out of the nut, or it does not hold. Take one of 12\u00a0mm or longer.",
    ]);
    expect(await found("[Q1, HS1, 1 × M3x6, 1 × M3 nut] {stack(M3x6) = 2 mm}")).toEqual([]);
  });

  test.each([
    // The thickest counts.
    "[1 × rear panel, 1 × M3x6, 1 × M3 nut] {stack(M3x6) = 3 mm ± 0.5 mm}",
    "[1 × rear panel, 1 × M3x6, 1 × M3 nut] {stack(M3 × 6) = 2 mm + 1.6 mm}",
    "[1 × rear panel, 1 × M3x6, 1 × M3 nut] {stack(panel) = 4 mm}",
    "[1 × rear panel, 1 × M3x6, 1 × M3 nut] {stack(Q1) = 0.16 in}",
    "[1 × rear panel, 1 × M3x4, 1 × standoff] {stack(M3x4) = 1.5 mm}",
    "[1 × rear panel, 1 × M3x6, 1 × M3x8, 1 × M3 nut] [1 × M3x4] {stack(M3x4) = 4 mm}",
  ])("is too thick: %s", async (text) => {
    expect(await found(text)).toHaveLength(1);
  });

  test.each([
    "[1 × rear panel, 1 × M3x6, 1 × M3 nut] {stack(M3x6) = 2 mm}",
    "[1 × rear panel, 1 × M3x6, 1 × M3 nut] {stack(M3x6) = 3 V}",
    "[1 × thick plate, 1 × M3x6, 1 × M3 nut] {stack(M3x6) = 2 mm}",
  ])("is not: %s", async (text) => {
    expect(await found(text)).toEqual([]);
  });

  test("is that of its own step alone", async () => {
    const steps =
      "1. A. [1 × rear panel, 1 × M3x6, 1 × M3 nut] {stack(M3x6) = 2 mm}\n2. B. [1 × thick plate, 1 × M3x6, 1 × M3 nut]";
    const all = await messages(kit(`## Sink\n\n${steps}`, LIST, "off-board: [HS1]\n"), CODE);
    expect(all).toHaveLength(1);
    expect(all[0]).toContain("thick plate 4");
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
