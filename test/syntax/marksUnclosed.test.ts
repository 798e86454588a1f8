/** A mark with a bracket missing gets a problem at the bracket and a fix; brackets of prose get none. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { SyntaxProblem } from "../../server/src/syntax/dialect.ts";
import { digestPiece } from "../../server/src/syntax/digest.ts";
import { MAX_MARK } from "../../server/src/syntax/marks/words.ts";
import { applyEdits } from "../../server/src/text/span.ts";
import { hostileText } from "./hostile.ts";

function read(text: string) {
  return digestPiece(text, undefined, { links: [], footnotes: [] })!;
}

function problems(text: string): readonly SyntaxProblem[] {
  return read(text).problems;
}

/** Pairs of the text as written and as the fix leaves it. */
const FIXED: readonly (readonly [string, string])[] = [
  ["Solder [R4.", "Solder [R4]."],
  ["Solder [R4 and R5.", "Solder [R4, R5]."],
  ["Solder [R4 und R5 flach auf.", "Solder [R4, R5] flach auf."],
  ["Soudez [R4, R5 et R6 à plat.", "Soudez [R4, R5, R6] à plat."],
  ["Solder [R4 flat on the board.", "Solder [R4] flat on the board."],
  ["Solder [R4, 3 mm above the board.", "Solder [R4], 3 mm above the board."],
  ["Solder [R1–R4, R7", "Solder [R1–R4, R7]"],
  ["Solder [R1 to R4 first", "Solder [R1 to R4] first"],
  ["Solder [C1, 3, 6–8 now", "Solder [C1, 3, 6–8] now"],
  ["Solder [relay/R1, 2.", "Solder [relay/R1, 2]."],
  ["Solder [R1–R4 = 4k7.", "Solder [R1–R4 = 4k7]."],
  ["Solder [R1 = 4,7 kΩ, then", "Solder [R1 = 4,7 kΩ], then"],
  ["Solder [R1 or R2.", "Solder [R1 or R2]."],
  ["Solder [Q1+Q2, then", "Solder [Q1+Q2], then"],
  ["Solder [all R except R16, R18 now", "Solder [all R except R16, R18] now"],
  ["Solder [rest of D.", "Solder [rest of D]."],
  ["Use [6 × M3x10 screws", "Use [6 × M3x10] screws"],
  ["Keep [later: K2.", "Keep [later: K2]."],
  ["See [see: first-power.", "See [see: first-power]."],
  ["[#first-power Switch on.", "[#first-power] Switch on."],
  ["Solder [R4, R5)", "Solder [R4, R5]"],
  ["Solder [R4}.", "Solder [R4]."],
  ["Solder (see [R4, R5)", "Solder (see [R4, R5])"],
  ["Solder [R4, then [R6].", "Solder [R4], then [R6]."],
  ["Solder [R4 and [see the photograph](a.jpg).", "Solder [R4] and [see the photograph](a.jpg)."],
  ["*Solder* [R4 **flat**", "*Solder* [R4] **flat**"],
  ["| Part | Value |\n|---|---|\n| [R1 | 10k |", "| Part | Value |\n|---|---|\n| [R1] | 10k |"],
  ["## Solder [R1", "## Solder [R1]"],
  ["> 1. Solder [R1,\n>    R2 and R3\n>    now", "> 1. Solder [R1, R2, R3]\n>    now"],
  ["1. Solder [R1,\r\n   R2.", "1. Solder [R1,\r\n   R2]."],
  ["caf&eacute; 🔧 [R&#49; now", "caf&eacute; 🔧 [R&#49;] now"],
  ["Solder R4].", "Solder [R4]."],
  ["Solder R4 and R5].", "Solder [R4, R5]."],
  ["Solder [R1] and R2, R3].", "Solder [R1] and [R2, R3]."],
];

describe("a bracket is missing", () => {
  test.each(FIXED)("and is put in: %s", (before, after) => {
    const [problem, ...others] = problems(before);
    expect(others).toEqual([]);
    expect(problem).toMatchObject({ message: expect.stringContaining("counted") });
    expect(applyEdits(before, [problem!.suggestion!])).toBe(after);
    expect(problems(after)).toEqual([]);
    expect(read(after).facts.filter(({ kind }) => kind === "mark").length).toBe(
      read(before).facts.filter(({ kind }) => kind === "mark").length + 1,
    );
  });

  test("the problem stands from the bracket to the last part", () => {
    const text = "1. Solder [R1] and\n   [R4 and R5 flat.\n2. Fit R6].";
    const places = problems(text).map(({ span }) => text.slice(span.start, span.end));
    expect(places).toEqual(["[R4 and R5", "R6]"]);
  });

  test("of free text only the author knows the end", () => {
    const [problem] = problems("Use [tool: hex key 2.5 mm and go on.");
    expect(problem).toMatchObject({ message: expect.stringContaining('"tool:"') });
    expect(problem!.suggestion).toBeUndefined();
  });
});

test("a mark that is too long to be read says so", () => {
  const list = Array.from({ length: Math.floor(MAX_MARK / 6) }, (_, n) => `R${1000 + n}`);
  expect(problems(`Solder [${list.join(",")}].`)).toEqual([]);
  const text = `Solder [${list.join(", ")}].`;
  expect(problems(text)).toMatchObject([
    { span: { start: 7, end: 8 }, message: expect.stringContaining(`${MAX_MARK} characters`) },
  ]);
  expect(problems(`Solder [${"the resistors and ".repeat(200)}].`)).toEqual([]);
});

describe("other brackets are left alone", () => {
  test.each([
    "Solder [R",
    "the interval [0, 5[ of R4",
    "x in [a1, b2)",
    "V = [a + b",
    "V = [2 × a + 3",
    "V = {[R1 + R2] * 2}",
    "see [1, 2",
    "a range of [10 mm",
    "[x] done, [ ] open, [",
    "[the photograph of R4](a.jpg)",
    "[see [R4](a.jpg)",
    "[R4][docs]\n\n[docs]: a.html",
    "a note[^R4]\n\n[^R4]: text",
    "![R4 and R5",
    "a \\[R4 and R5",
    "R4 and R5\\]",
    "`[R4 and R5` and ```R4]```",
    "    [R4 and R5",
    "<!-- [R4 and R5 -->",
    "<i title='[R4'>R5</i>",
    "[R1 is hot, see R2]",
    "a] and b]",
    "the file R4_x]",
    "the group ]R4, R5[",
    "https://example.com/[R4",
    "[see the resistors R4 and R5",
    "[note: R4 is hot",
  ])("%s", (text) => {
    expect(problems(text)).toEqual([]);
  });

  test("a near miss keeps its own problem", () => {
    expect(problems("Solder [R1–].")).toMatchObject([
      { message: expect.stringContaining("range") },
    ]);
  });
});

test("problems lie inside the text and their fixes can be applied, whatever the text", () => {
  fc.assert(
    fc.property(hostileText, (text) => {
      for (const { span, suggestion } of problems(text)) {
        expect(span.start).toBeGreaterThanOrEqual(0);
        expect(span.start).toBeLessThan(span.end);
        expect(span.end).toBeLessThanOrEqual(text.length);
        if (suggestion) applyEdits(text, [suggestion]);
      }
    }),
    { numRuns: 500 },
  );
});
