import { describe, expect, test } from "vitest";
import { definitionInGuide } from "../../server/src/features/definition.ts";
import { highlights } from "../../server/src/features/highlights.ts";
import { referencesInGuide, referencesInList } from "../../server/src/features/references.ts";
import { type AtCursor, atCursor, FOLDER } from "./cursor.ts";

const KIT = `---
parts: parts.csv
---

## A

1. Put [later: R2] aside, as R2 is tall.
2. Solder [all C except C2] and [R1–R3, Q1].
3. Solder [C2 or C3]. [#cut] See U3A, R12 and [2 × M3x6].
4. Back to [see: cut]. \`R2\`
--- file: parts.csv
Designator,Quantity,Value
"R1,R2,R3",3,1k
C1,1,1u
C2,1,2u
C3,1,3u
Q1,1,BC547
U3,1,LM358
R12,1,12k
,2,M3x6`;

/** The kit with the cursor before the n-th occurrence of a text. */
function at(text: string, which = 1): Promise<AtCursor> {
  let from = -1;
  for (let i = 0; i < which; i++) from = KIT.indexOf(text, from + 1);
  return atCursor(`${KIT.slice(0, from)}¦${KIT.slice(from)}`);
}

/** `line:column text role` of each reference. */
async function references(text: string, which = 1): Promise<string[]> {
  const { guide, uri, offset, list, files, service } = await at(text, which);
  const found = list
    ? referencesInList(guide, list, offset)
    : referencesInGuide(guide, uri, offset);
  return found.map(({ uri: where, span, as }) => {
    const { line, column } = service.lines(where)!.positionAt(span.start);
    const name = where.slice(FOLDER.length);
    return `${name}:${line + 1}:${column} ${files.get(name)!.slice(span.start, span.end)} ${as}`;
  });
}

describe("references", () => {
  test("to a part: its cell, each use, each mention, nothing in code", async () => {
    const wanted = [
      "parts.csv:2:4 R2 listed",
      "guide.md:7:15 R2 later",
      "guide.md:7:29 R2 named",
      "guide.md:8:33 R1–R3 fit",
    ];
    expect(await references("R2]")).toEqual(wanted);
    expect(await references("R2 is")).toEqual(wanted);
    expect(await references("R2,R3")).toEqual(wanted);
  });

  test("to a part of a set, of a choice, and to one that a set leaves out", async () => {
    expect(await references("C3]")).toEqual([
      "parts.csv:5:0 C3 listed",
      "guide.md:8:11 all C except C2 fit",
      "guide.md:9:17 C3 fit",
    ]);
    expect(await references("C2]")).toEqual([
      "parts.csv:4:0 C2 listed",
      "guide.md:8:24 C2 named",
      "guide.md:9:11 C2 fit",
    ]);
  });

  test("to a section's part, to a longer designator, to hardware", async () => {
    expect(await references("U3A")).toEqual(["parts.csv:7:0 U3 listed", "guide.md:9:33 U3A named"]);
    expect(await references("R12 and")).toEqual([
      "parts.csv:8:0 R12 listed",
      "guide.md:9:38 R12 named",
    ]);
    expect(await references("M3x6]")).toEqual([
      "parts.csv:9:0 ,2,M3x6 listed",
      "guide.md:9:47 2 × M3x6 fit",
    ]);
  });

  test("to a label, from it and from where it is referred to", async () => {
    const wanted = ["guide.md:9:24 cut label", "guide.md:10:17 cut see"];
    expect(await references("cut]", 1)).toEqual(wanted);
    expect(await references("cut]", 2)).toEqual(wanted);
  });

  test("to all parts of a line, from a cell that names none", async () => {
    expect(await references("1k")).toHaveLength(6);
  });
});

describe("in figures", () => {
  const FIGURES = `---
parts: parts.csv
supply: { VCC: 12 V }
figures: { Iq: 20 mA }
---

## A

1. {P(R1) = Iq^2 * R1} of {VCC * Iq = 0.24 W}, {I(VCC)}.
2. {read V(R1) = 2 V ± 5 %} in R1–R2. [R1, R2]
--- file: parts.csv
Designator,Value
R1,1k
R2,2k`;

  async function inFigures(cursor: string): Promise<string[]> {
    const { guide, uri, offset, files } = await atCursor(cursor);
    return referencesInGuide(guide, uri, offset).map(({ uri: where, span, as }) => {
      const name = where.slice(FOLDER.length);
      return `${files.get(name)!.slice(span.start - 3, span.end + 1)} ${as}`;
    });
  }

  test("a part: also where a sum uses it, and ranges of the prose", async () => {
    const wanted = [
      "ue\nR1, listed",
      "in R1–R2. named",
      ". [R1, fit",
      "{P(R1) named",
      " * R1} named",
      " V(R1) named",
    ];
    expect(await inFigures(FIGURES.replace("* R1}", "* R¦1}"))).toEqual(wanted);
  });

  test("a name: where it is given first, then its uses", async () => {
    const own = await inFigures(FIGURES.replace("{VCC *", "{V¦CC *"));
    expect(own).toEqual([" { VCC: defined", "f {VCC  named", "{I(VCC) named"]);
    expect(await inFigures(FIGURES.replace("{ VCC:", "{ VC¦C:"))).toEqual(own);
    expect(await inFigures(FIGURES.replace("I(VCC)", "I(VC¦C)"))).toEqual(own);
  });

  test("lead from a use to the definition", async () => {
    const { guide, uri, offset, files } = await atCursor(FIGURES.replace("= Iq^2", "= I¦q^2"));
    const [target] = definitionInGuide(guide, uri, offset)!.targets;
    const at = files.get("guide.md")!.indexOf("Iq:");
    expect(target!.span).toEqual({ start: at, end: at + 2 });
  });
});

test("highlights are those of the same file; where the part is fitted stands out", async () => {
  const { guide, uri, offset, list } = await at("R2]");
  const found = highlights(guide, uri, list, offset);
  expect(found.map(({ kind }) => kind)).toEqual(["names", "names", "settles"]);
  expect(highlights(guide, `${FOLDER}parts.csv`, guide.lists[0], 35)).toHaveLength(1);
});
