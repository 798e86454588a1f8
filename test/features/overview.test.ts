/** A guide at a glance. */
import { describe, expect, test } from "vitest";
import { overviewOf } from "../../server/src/features/overview.ts";
import { stagesOf } from "../../server/src/features/stages.ts";
import { guideOf } from "../model/guides.ts";

const LIST =
  'Designator,Value,Package,Height\n"R1,R2,R3",4k7,0207,2.5\nC1,100n,RM5,7\nU1,TL072,DIP-8,\nD1,1N4148,DO-35,2\n';
const BODY = `## Low parts

1. Solder [R1, R2].
2. Look for R3
   and wait.

## Later parts

1. Solder [C1].

## Notes

Nothing to do.
`;

describe("The overview", () => {
  test("tells of each stage with steps what it fits", () => {
    const stages = stagesOf(guideOf(BODY, LIST), []);
    expect(
      stages.map(({ number, title, fitted, steps }) => [number, title, fitted, steps.length]),
    ).toEqual([
      [1, "Low parts", 2, 2],
      [2, "Later parts", 1, 1],
    ]);
    expect(stages[0]!.steps.map(({ number, text, parts }) => [number, text, parts])).toEqual([
      ["1.1", "Solder R1, R2.", ["R1", "R2"]],
      ["1.2", "Look for R3 and wait.", []],
    ]);
  });

  test("lists what is left, the lowest first and unknown heights last", () => {
    const { left, listed, fitted } = overviewOf(guideOf(BODY, LIST), []);
    expect([listed, fitted]).toEqual([6, 3]);
    expect(left.map(({ items, height }) => [items, height])).toEqual([
      [["D1"], 2],
      [["R3"], 2.5],
      [["U1"], expect.anything()],
    ]);
  });

  test("puts parts of one height together, with what is off the boards at the end", () => {
    const list =
      'Designator,Value,Height\nR7,1k,2.5\n"R1,R2,R3",4k7,2.5\nHS1,clip,1\nX1,odd,\nC1,1n,7\n';
    const guide = guideOf("## A\n\n1. Look.\n", list, "off-board: [HS1]\n");
    const { left } = overviewOf(guide, []);
    expect(left.map(({ items, height, offBoard }) => [items.join(", "), height, offBoard])).toEqual(
      [
        ["R1–R3, R7", 2.5, false],
        ["C1", 7, false],
        ["X1", undefined, false],
        ["HS1", undefined, true],
      ],
    );
  });

  test("names boards only where there are several", () => {
    const list = "Designator,Value,Board\nR1,1k,main\nR1,1k,psu\n";
    const { left } = overviewOf(guideOf("## A\n\n1. Solder [psu/R1].\n", list), []);
    expect(left.map(({ items, board }) => [items, board])).toEqual([[["R1"], "main"]]);
    const one = overviewOf(guideOf("## A\n\n1. Look.\n", "Designator,Board\nR1,main\n"), []);
    expect(one.left.map(({ items, board }) => [items, board])).toEqual([[["R1"], ""]]);
  });

  test("gives each step its worst finding, and the stage that of its steps", () => {
    const guide = guideOf(BODY, LIST);
    const text = guide.pages[0]!.text.toString();
    const at = (words: string, severity: "error" | "warning" | "hint") => {
      const start = text.indexOf(words);
      return { uri: "file:///g.md", span: { start, end: start + 1 }, severity };
    };
    const findings = [
      at("R2]", "warning"),
      at("R1", "hint"),
      at("wait", "error"),
      at("Nothing", "error"),
      at("parts:", "error"),
    ];
    const stages = stagesOf(guide, findings);
    expect(stages.map(({ worst }) => worst)).toEqual(["error", undefined]);
    expect(stages[0]!.steps.map(({ worst }) => worst)).toEqual(["warning", "error"]);
    expect(overviewOf(guide, findings)).toMatchObject({ errors: 3, warnings: 1 });
  });

  test("counts the findings that are too many to be shown", () => {
    const rest = { severity: "information", standsFor: { error: 7 } } as const;
    const { errors } = overviewOf(guideOf(BODY, LIST), [rest]);
    expect(errors).toBe(7);
  });
});
