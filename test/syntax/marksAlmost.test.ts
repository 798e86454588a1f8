/** Near misses of part marks get a problem and, where it is plain, a fix; prose in brackets gets none. */
import { describe, expect, test } from "vitest";
import type { SyntaxProblem } from "../../server/src/syntax/dialect.ts";
import { parseMarkdown } from "../../server/src/syntax/markdown.ts";
import { applyEdits } from "../../server/src/text/span.ts";
import { dialectNodes, NO_LABELS } from "./markdownTrees.ts";
import { syntaxProblems } from "./problems.ts";

function problems(text: string): SyntaxProblem[] {
  return syntaxProblems(parseMarkdown(text, NO_LABELS));
}

/** The text after the fixes of all its problems. */
function fixed(text: string): string {
  return problems(text).reduce((_, { suggestion }) => {
    expect(suggestion).toBeDefined();
    return applyEdits(text, [suggestion!]);
  }, text);
}

describe("a near miss with a fix", () => {
  test.each([
    ["[R1-]", "[R1]"],
    ["[R1–]", "[R1]"],
    ["[-R4]", "[R4]"],
    ["[R1..]", "[R1]"],
    ["[Q1+]", "[Q1]"],
    ["[R2, R1-]", "[R2, R1]"],
    ["[fit: R1]", "[R1]"],
    ["[solder: R1, R2 = 4k7]", "[R1, R2 = 4k7]"],
    ["[latr: K2]", "[later: K2]"],
    ["[inser: U3]", "[insert: U3]"],
    ["[tools: side cutters]", "[tool: side cutters]"],
    ["[later K2]", "[later: K2]"],
    ["[R1,,R2]", "[R1,R2]"],
    ["[R1, R2,]", "[R1, R2]"],
    ["[, R1]", "[ R1]"],
    ["[R1–C4]", "[R1, C4]"],
    ["[R1-C4]", "[R1, C4]"],
    ["[R4–R1]", "[R1–R4]"],
    ["[R10–4]", "[R4–R10]"],
    ["[R1; R2]", "[R1, R2]"],
    ["[R1 R2 R3]", "[R1, R2, R3]"],
    ["[R1 and R2]", "[R1, R2]"],
    ["[R1, R2 und R3]", "[R1, R2, R3]"],
    ["[R1 & C2]", "[R1, C2]"],
    ["[R1/R2]", "[R1, R2]"],
    ["[R1 oder R2]", "[R1 or R2]"],
    ["[remaining R]", "[rest of R]"],
    ["[all other 100n]", "[rest of 100n]"],
    ["[the rest of the R]", "[rest of R]"],
    ["[all R but R1, R2]", "[all R except R1, R2]"],
    ["[all the R without R1]", "[all R except R1]"],
    ["[R1–R8 (1k)]", "[R1–R8 = 1k]"],
    ["[R1 4k7]", "[R1 = 4k7]"],
    ["[R1: 4k7]", "[R1 = 4k7]"],
    ["[R1 =]", "[R1]"],
    ["[R1 = 4k7, R2]", "[R1 = 4k7], [R2]"],
    ["[R1 = 4k7, R2 = 10k]", "[R1 = 4k7], [R2 = 10k]"],
    ["[**R1**]", "[R1]"],
    ["[R1 *and* R2]", "[R1, R2]"],
    ["[`latr`: K2]", "[later: K2]"],
    ["[`R1`, `R2`]", "[R1, R2]"],
    ["[R1, [R2]]", "[R1, R2]"],
    ["[own: *thermal* paste]", "[own: thermal paste]"],
    ["[R1](4k7)", "[R1 = 4k7]"],
    ["[R1](done)", "[R1] (done)"],
    ["[R1]: done", "[R1] done"],
    ["[R1~R4]", "[R1–R4]"],
  ])("%s becomes %s, which is a mark without problems", (before, after) => {
    expect(problems(before)).toHaveLength(1);
    expect(fixed(before)).toBe(after);
    expect(problems(after)).toEqual([]);
    const marks = dialectNodes(after);
    expect(marks.length).toBeGreaterThan(0);
    for (const mark of marks) expect(mark).toMatchObject({ mark: { certain: true } });
  });
});

describe("a near miss that only the author can mend", () => {
  test.each([
    ["[later:]", "names no part"],
    ["[tool: ]", "names nothing"],
    ["[spare: R1, R2]", "no role word"],
    ["[später: K2]", "English in every guide"],
    ["[later: the big one]", '"the big one" is no part'],
    ["[R1, R2, see below]", '"see below" is no part'],
    ["[all R except ]", 'No part follows "except"'],
    ["[R1–R999999]", "999999 parts"],
  ])("%s: %s", (text, message) => {
    expect(problems(text)).toMatchObject([{ message: expect.stringContaining(message) }]);
    expect(dialectNodes(text).every((node) => node.type === "almostMark")).toBe(true);
  });
});

test("an unknown role tells all that are known", () => {
  expect(problems("[spare: R1]")[0]!.message).toContain(
    "later, place, insert, empty, bridge, make, match, try, remove, tool, own, see",
  );
});

describe("prose in brackets is left alone", () => {
  test.each([
    "[see note 3]",
    "[1]",
    "[1, 2]",
    "[x]",
    "[ ]",
    "[]",
    "[sic]",
    "[citation needed]",
    "[Fig. 3]",
    "[5 V]",
    "[A]",
    "[...]",
    "[note: see below]",
    "[http://example.com]",
    "[see R1]",
    "[R1 is hot]",
    "[R1 *is* hot]",
    "[fig, as shown]",
    "[Step 3]",
    "[all of them]",
    "[all parts]",
    "[rest of the parts]",
    "[later]",
    "[2x4]",
    "[2 × 10 mm]",
    "[0, 1)",
    "[IEC 60617-2]",
    "[a = b]",
    "[key: value]",
    "[#12]",
    "[sea: blue]",
    "[now: go]",
    "[the part, the whole]",
    "[R1](https://example.com/r1.pdf)",
    "[R1](r1.jpg)",
    "[R1](#resistors)",
    "![R1](x)",
    "[docs]: https://example.com",
    "[^1]",
    "\\[R1-]",
    "`[R1-]`",
  ])("%s", (text) => {
    expect(problems(text)).toEqual([]);
  });
});

test("a problem stands at its place in the source", () => {
  const text = "> - caf&eacute; 🔧 [R1,\n>   R2, [R3]] and [latr: K2]";
  const places = problems(text).map(({ span }) => text.slice(span.start, span.end));
  expect(places).toEqual(["[R1,\n>   R2, [R3]]", "[latr: K2]"]);
});
