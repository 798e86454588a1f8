import { describe, expect, test } from "vitest";
import { applyFix, checkFixture, fixture } from "../fixture.ts";
import { drawn, kit, messages } from "./kit.ts";

const LIST = `
Designator,Quantity,Value,Package,Height
"R1, R2",2,10k,R_Axial_DIN0207,2.5
Q1,1,BC547B,TO-92,8
S1,1,switch,,20
,4,M3x10,,`;
const STEPS = "## Board\n\n1. Fit [R1, R2], [Q1], [S1], [4 × M3x10].";

function found(more: string, list = LIST): Promise<string[]> {
  return messages(kit(STEPS, list, `${more}\n`), "front-matter");
}

describe("What the front matter says", () => {
  test.each([
    "heights: { R1: 3 mm, R1–R4: 3 mm, TO-92: 5 mm, r_axial: 2 mm }",
    "off-board: [S1, S1–S3]",
    "spares: { M3x10: 2 }",
    "clearance: { whatever: 24 mm }",
    "checks: { height-order: error, too-tall: off }",
    "columns: { value: Value }",
  ])("may be %s", async (more) => {
    expect(await found(more)).toEqual([]);
  });

  test.each([
    ["heights: { K1: 3 mm }", 'no part or package "K1"'],
    ["off-board: [K1]", 'no part "K1"'],
    ["spares: { M4x10: 2 }", 'fits "M4x10"'],
    [
      "checks: { too-tal: off }",
      'No check is called "too-tal", so this sets nothing. Did you mean too-tall?',
    ],
    ["columns: { values: Value }", '"values" is not what a column can mean'],
    ["columns: { value: Valeu }", 'No column of the parts list is headed "Valeu"'],
  ])("is a warning when it names nothing: %s", async (more, says) => {
    const [message, ...others] = await found(more);
    expect(message).toMatch(/^warning: /);
    expect(message).toContain(says);
    expect(others).toEqual([]);
  });

  test("names a board that the lists do not have", async () => {
    const list = "Designator,Quantity,Value,Height,Board\nR1,1,10k,2,main\nR2,1,10k,2,relay";
    const body = "## A\n\n1. Fit [main/R1], [relay/R2].";
    const more = "clearance: { mian: 24 mm, relay: 10 mm }\n";
    expect(await messages(kit(body, list, more), "front-matter")).toEqual([
      'warning: No board is called "mian". The parts list has: main, relay. Did you mean main?',
    ]);
  });

  test("is not held against a list that cannot be read", async () => {
    expect(await found("heights: { K1: 3 mm }\nchecks: { too-tal: off }", "")).toHaveLength(1);
  });

  test("is an error at its place where it cannot be read, with the fix beside it", async () => {
    const { found, expected } = await drawn(
      `--- file: guide.md
---
parts: parts.csv
titel: Wren
^^^^^ front-matter
---

1. Fit [R1].
--- file: parts.csv
Designator,Quantity,Value,Height
R1,1,10k,2.5
`,
      "front-matter",
    );
    expect(found).toEqual(expected);
  });

  test("is put right by the fix", async () => {
    const text = kit(STEPS, LIST, "checks: { too-tal: off }\n");
    const { diagnoses } = await checkFixture(text, "front-matter");
    const [fix] = diagnoses[0]!.fixes();
    expect(fix!.title).toBe("Write too-tall");
    expect(applyFix(fixture(text).files, fix!).get("guide.md")).toContain("{ too-tall: off }");
  });
});
