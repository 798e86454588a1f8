import { describe, expect, test } from "vitest";
import { applyFix, checkFixture } from "../fixture.ts";
import { kit, messages } from "./kit.ts";

const CODE = "hole-size";
const LIST = "Designator,Value\nR1,1k";

function found(figure: string): Promise<string[]> {
  return messages(kit(`## Drill\n\n1. Drill {${figure}}. [R1]`, LIST), CODE);
}

describe("A hole is in order", () => {
  // ISO 273: M3 3.2, 3.4, 3.6 mm; the practice of 3.5 mm lies between medium and coarse.
  test.each([
    "hole(M3) = 3.2 mm",
    "hole(M3) = 3.4 mm",
    "hole(M3) = 3.5 mm",
    "hole(M3) = 3.6 mm",
    "hole(M2.5) = 2.9 mm",
    "hole(M3) = clearanceHole(M3)",
    // ISO 2306: M3 2.5 mm; 2.7 mm in hard metal.
    "tap(M3) = 2.5 mm",
    "tap(M3) = 2.7 mm",
    "tap(M4) = 3.3 mm",
    "tap(M8) = 6.75 mm",
    // ASME B18.2.8.
    "hole(4-40) = 3.3 mm",
    // No thread, no length, no such name.
    "hole(R1) = 1 mm",
    "hole(M3) = 3 V",
    "drill(M3) = 2 mm",
    "hole(M7) = 2 mm",
  ])("%s", async (figure) => {
    expect(await found(figure)).toEqual([]);
  });
});

describe("A hole is not in order", () => {
  test.each([
    [
      "hole(M3) = 3 mm",
      "A hole of 3 mm is narrower than the fine one for M3, 3.2 mm: the screw jams or does not pass at all. Drill 3.4 mm, the medium hole (ISO 273).",
    ],
    [
      "hole(M3) = 2.5 mm",
      "A hole of 2.5 mm is narrower than the fine one for M3, 3.2 mm: the screw jams or does not pass at all. Drill 3.4 mm, the medium hole (ISO 273). This is the drill for a thread: name it tap(M3) if one is cut.",
    ],
    [
      "hole(M3) = 4 mm",
      "A hole of 4 mm is wider than the coarse one for M3, 3.6 mm: parts shift and the head gets little to sit on. Drill 3.4 mm, the medium hole (ISO 273).",
    ],
    [
      "tap(M3) = 2.2 mm",
      "A drill of 2.2 mm is too thin before tapping M3: the tap breaks. Drill 2.5 mm (ISO 2306).",
    ],
    [
      "tap(M3) = 3 mm",
      "A drill of 3 mm leaves too little for the thread of M3, which strips. Drill 2.5 mm (ISO 2306), up to 2.7 mm in hard metal.",
    ],
  ])("%s", async (figure, message) => {
    expect(await found(figure)).toEqual([`warning: ${message}`]);
  });

  test("in the front matter too", async () => {
    const more = "figures: { hole(M3): 3 mm }\n";
    expect(await messages(kit("## A\n\n1. [R1]", LIST, more), CODE)).toHaveLength(1);
  });

  test("and the fix writes the medium hole in the author's way", async () => {
    const body = "## Drill\n\n1. Drill {hole(M3) = 3,0 mm}. [R1]";
    const one = await checkFixture(kit(body, LIST), CODE);
    const [fix] = one.diagnoses.flatMap((diagnosis) => diagnosis.fixes());
    expect(applyFix(one.files, fix!).get("guide.md")).toContain("{hole(M3) = 3,4 mm}");
  });
});
