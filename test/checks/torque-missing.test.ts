import { describe, expect, test } from "vitest";
import { applyFix, checkFixture } from "../fixture.ts";
import { kit, messages } from "./kit.ts";

const CODE = "torque-missing";
const LIST = `Designator,Quantity,Value,Package,Description
"Q1, Q2",2,IRF510,TO-220-3_Vertical,MOSFET
Q3,1,2SC5200,TO-264,NPN
U1,1,LM317,TO-220,regulator
Q4,1,BC547,TO-92,NPN
HS1,1,4 K/W,,heat sink
,4,mica disc,,insulator for TO-220
,4,M3x10,,"pan head screw, steel"
,8,M3x6,,"pan head screw, steel"
,4,M3 nut,,
,1,clip,,spring clip for TO-220`;

function found(body: string): Promise<string[]> {
  return messages(kit(body, LIST, "off-board: [HS1]\n"), CODE);
}

describe("A torque is missed", () => {
  test.each([
    "1. Screw the transistor to the rear panel. [Q1, 1 × M3x10, 1 × M3 nut]",
    "1. Place the two. [place: Q1, Q2]\n2. Screw them to the heat sink. [2 × M3x10]\n3. Solder them. [Q1, Q2]",
    "1. Fit [Q1].\n2. Put the disc under Q1 and screw it down. [1 × mica disc, 1 × M3x10]",
    "1. Fit [Q1].\n2. Screw Q1 to the panel. [1 × M3x10]",
    "1. Löte [Q1] ein.\n2. Schraube ihn an den Kühlkörper. [1 × M3x10]",
    "1. Souder [Q1].\n2. Visser sur le dissipateur. [1 × M3x10]",
  ])("%s", async (body) => {
    expect(await found(`## Sink\n\n${body}`)).toHaveLength(1);
  });

  // STMicroelectronics TN1225: 0.55 N·m, at most 0.70 N·m for a TO-220.
  test("with the figures of the package", async () => {
    const body = "## Sink\n\n1. Fit [Q1, Q2].\n2. Screw both to the heat sink. [2 × M3x10]";
    expect(await found(body)).toEqual([
      "warning: Q1 and Q2 are screwed down here without a torque. Too loose, they run hot; too tight, the tab bends or the insulator breaks. State it: 0.55\u00a0N·m for a TO-220, at most 0.7\u00a0N·m (STMicroelectronics TN1225); the part's own data sheet comes first.",
    ]);
  });

  test("of different packages the one that stands least counts", async () => {
    const [message] = await found("## Sink\n\n1. Screw them down. [Q1, Q3, 2 × M3x10]");
    expect(message).toContain("0.55\u00a0N·m for a TO-220");
  });
});

test("A device whose package has no usual torque is left to its data sheet", async () => {
  const list =
    "Designator,Quantity,Value,Package\nQ1,1,IRF540,TO-220\nQ2,1,BD139,TO-126\n,4,M3x10,";
  const text = kit("## Sink\n\n1. Screw them to the heat sink. [Q1, Q2, 2 × M3x10]", list);
  const [message] = await messages(text, CODE);
  expect(message).toContain("Write the torque that the data sheet gives");
  expect((await checkFixture(text, CODE)).diagnoses.flatMap((one) => one.fixes())).toEqual([]);
});

describe("No torque is missed", () => {
  test.each([
    ["where it is told", "1. Screw it down. [Q1, 1 × M3x10] Tighten to {torque(Q1) = 0.55 N·m}."],
    ["where it is told in words", "1. Screw it down with 0.5 N·m. [Q1, 1 × M3x10]"],
    ["where it is told in words, in lbf", "1. Screw it down with 5 in-lb. [Q1, 1 × M3x10]"],
    [
      "where it follows",
      "1. Screw it down. [Q1, 1 × M3x10]\n2. Turn it.\n3. Tighten to {torque(M3) = 0.5 N·m}.",
    ],
    ["of a device without a screw", "1. Fit the regulator upright. [U1]"],
    ["of one under a clip", "1. Fit [U1] and push the clip over its tab. [1 × clip]"],
    ["of the board's screws", "1. Fit [U1].\n2. Screw the board down. [4 × M3x6]"],
    [
      "of the board's screws in the same step",
      "1. Fit the regulator, then screw the board down. [U1] [4 × M3x6]",
    ],
    ["of a small transistor", "1. Screw it to the heat sink. [Q4, 1 × M3x10]"],
    [
      "of what is only tried",
      "1. Try them on the heat sink. [try: Q1, 1 × M3x10]\n2. Take them off. [remove: Q1, 1 × M3x10]",
    ],
    ["of the heat sink itself", "1. Screw the heat sink to the panel. [HS1, 2 × M3x10]"],
  ])("%s", async (_, body) => {
    expect(await found(`## Sink\n\n${body}`)).toEqual([]);
  });
});

test("The fix writes the torque behind the screws", async () => {
  const body = "## Sink\n\n1. Fit [Q1, Q2].\n2. Screw both to the heat sink. [2 × M3x10]";
  const one = await checkFixture(kit(body, LIST, "off-board: [HS1]\n"), CODE);
  const [fix] = one.diagnoses.flatMap((diagnosis) => diagnosis.fixes());
  expect(fix?.safe).toBe(false);
  const after = applyFix(one.files, fix!).get("guide.md")!;
  expect(after).toContain("[2 × M3x10] {torque(Q1, Q2) = 0.55 N·m}");
  const again = `--- file: guide.md\n${after}--- file: parts.csv\n${LIST}\n`;
  expect(await messages(again, CODE)).toEqual([]);
});
