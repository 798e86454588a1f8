import { describe, expect, test } from "vitest";
import { foldsOf } from "../../server/src/features/folding.ts";
import { lineLenses, stageLenses } from "../../server/src/features/lenses.ts";
import { linksOf } from "../../server/src/features/links.ts";
import { type OutlineEntry, outlineOf } from "../../server/src/features/outline.ts";
import { selectionsAt } from "../../server/src/features/selection.ts";
import { symbolsMatching } from "../../server/src/features/symbols.ts";
import type { Span } from "../../server/src/text/span.ts";
import { atCursor, FOLDER } from "./cursor.ts";

const KIT = `---
title: Wren
parts: parts.csv
pages: [more.md]
---

# Wren

Read all of it first.

## Low parts

> **CAUTION: hot surface.** The iron burns.

1. Solder [R1–R3 = 1k] flush and cut the leads; look at each joint before you go on.

   ![flush](img/flush.png "Flush")

2. Case
   1. Drill [#drill] the lid.
   2. Fix it with [2 × M3x6].

<!-- allow long-step: it is short -->

3. Keep [later: C1] in the bag, R2 is in the way.

## Notes

Nothing here.

## Tall parts

1. Solder [C1].
--- file: more.md
## Test

1. Measure, see [see: drill]. [empty: R4]
--- file: parts.csv
Designator,Quantity,Value
"R1,R2,R3",3,1k
C1,1,100u
R4,1,2k
,2,M3x6
Q1,1,BC547`;

const at = await atCursor(KIT);
const page = `${FOLDER}guide.md`;
const text = at.files.get("guide.md")!;

/** Name and last words of each entry, indented by its depth. */
function shown(entries: readonly OutlineEntry[], depth = 0): string[] {
  return entries.flatMap(({ name, detail, span, inner }) => {
    const end = text.slice(span.start, span.end).slice(-10);
    return [
      `${" ".repeat(depth)}${name}${detail && ` (${detail})`} … ${end}`,
      ...shown(inner, depth + 1),
    ];
  });
}

/** First and last words of a stretch. */
function ends({ start, end }: Span): string {
  const stretch = text.slice(start, end).replace(/\s+/g, " ");
  return stretch.length <= 25 ? stretch : `${stretch.slice(0, 12)} … ${stretch.slice(-10)}`;
}

test("the outline has stages, steps and notes, each with what belongs to it", () => {
  expect(shown(outlineOf(at.guide, page))).toEqual([
    "1 Low parts (5 steps) … n the way.",
    " CAUTION: hot surface … ron burns.",
    ' 1.1 Solder R1–R3 flush and cut the leads; look at each joint … … g "Flush")',
    " 1.2 Case … 2 × M3x6].",
    "  1.2.1 Drill the lid. … ] the lid.",
    "  1.2.2 Fix it with 2 × M3x6. … 2 × M3x6].",
    " 1.3 Keep C1 in the bag, R2 is in the way. … n the way.",
    "Notes … hing here.",
    "2 Tall parts (1 step) … lder [C1].",
    " 2.1 Solder C1. … lder [C1].",
  ]);
});

test("the front matter, stages, steps and notes fold", () => {
  const folds = foldsOf(at.guide, page).map(ends);
  expect(folds[0]).toBe("--- title: W … re.md] ---");
  expect(folds).toContain("## Low parts … n the way.");
  expect(folds).toContain("2. Case 1. D … 2 × M3x6].");
  expect(folds).toContain("> **CAUTION: … ron burns.");
});

test("a table that is kept current folds from comment to comment", async () => {
  const table = "<!-- parts table -->\n\n| a |\n|---|\n| b |\n\n<!-- end -->";
  const { guide, files } = await atCursor(
    `---\nparts: p.csv\n---\n\n## A\n\n${table}\n\n1. [R1]\n--- file: p.csv\nDesignator,Value\nR1,1k`,
  );
  const whole = files.get("guide.md")!;
  const folds = foldsOf(guide, page).map(({ start, end }) => whole.slice(start, end));
  expect(folds).toContain(table);
});

test("a selection grows from the part to the page", () => {
  expect(selectionsAt(at.guide, page, text.indexOf("R3 =")).map(ends)).toEqual([
    "R1–R3",
    "R1–R3 = 1k",
    "[R1–R3 = 1k]",
    "Solder [R1–R … you go on.",
    '1. Solder [R … g "Flush")',
    "## Low parts … n the way.",
    "--- title: W … der [C1]. ",
  ]);
  expect(selectionsAt(at.guide, page, 5).map(ends)).toHaveLength(2);
});

test("a selection grows from what is inside a figure to the figure", async () => {
  const { guide, uri, offset, files } = await atCursor(
    "---\nparts: p.csv\n---\n\n1. Take {2 * 3¦ V} now.",
  );
  const whole = files.get("guide.md")!;
  const [inside, figure] = selectionsAt(guide, uri, offset);
  expect(whole.slice(inside!.start, inside!.end)).toBe("2 * 3 V");
  expect(whole.slice(figure!.start, figure!.end)).toBe("{2 * 3 V}");
});

test("links lead to lists, pages, pictures, and from `see` to its label", () => {
  const onPage = [...linksOf(at.guide, page)];
  expect(onPage.map(({ span }) => ends(span))).toEqual(["parts.csv", "more.md", "img/flush.png"]);
  const [see] = [...linksOf(at.guide, `${FOLDER}more.md`)];
  expect(see).toMatchObject({ to: "place", target: { uri: page } });
  const { span } = (see as { target: { span: Span } }).target;
  expect(text.slice(span.start, span.end)).toBe("drill");
});

test("above a stage stand its parts and how far the fitting has come", () => {
  expect(stageLenses(at.guide, page).map(({ title }) => title)).toEqual([
    "3 parts · 3 of 6 fitted",
    "1 part · 4 of 6 fitted",
  ]);
  expect(stageLenses(at.guide, `${FOLDER}more.md`).map(({ title }) => title)).toEqual([
    "1 part · 5 of 6 fitted",
  ]);
});

test("above a line of the list stands its step", () => {
  const lenses = lineLenses(at.guide, at.guide.lists[0]!);
  expect(lenses.map(({ title }) => title)).toEqual([
    "Step 1.1",
    "Step 2.1",
    "Step 3.1",
    "Step 1.2.2",
    "No step yet",
  ]);
  expect(lenses[0]!.use?.step.number).toBe("1.1");
});

describe("symbols of the workspace are found", () => {
  const found = (query: string) => symbolsMatching(at.guide, query).map(({ name }) => name);

  test.each([
    ["by the title of a stage", "tall", ["2 Tall parts"]],
    ["by a designator", "r1", ["R1"]],
    ["by the beginning of one", "R", ["R1", "R2", "R3", "R4"]],
    ["by a value", "100", ["C1"]],
    ["all stages without a query", "", ["1 Low parts", "2 Tall parts", "3 Test"]],
    ["not at all", "xyz", []],
  ])("%s", (_, query, names) => {
    expect(found(query)).toEqual(names);
  });
});
