/** Where a bracket or brace could be Markdown as well: the five rules of the dialect. */
import { describe, expect, test } from "vitest";
import {
  definedLabels,
  definitionProblems,
  parseMarkdown,
} from "../../server/src/syntax/markdown.ts";
import { dialectNodes, dialectTexts, NO_LABELS } from "./markdownTrees.ts";
import { shortMark } from "./marksShort.ts";
import { syntaxProblems } from "./problems.ts";

function marksOf(
  text: string,
  options: { labels: string[]; footnotes: string[] } = { labels: [], footnotes: [] },
): string[] {
  return dialectNodes(text, options).flatMap((node) =>
    node.type === "partMark" ? [shortMark(node.mark)] : [],
  );
}

describe("CommonMark decides first", () => {
  test.each([
    ["[R1](url)", []],
    ["[R1](<a b>)", []],
    ["![R1](url)", []],
    ["![R1]", []],
    ["![see [R1]]", ["fit R1"]],
    ["[R1][R2]", ["fit R1", "fit R2"]],
    ["[R1][]", ["fit R1"]],
    ["[R1](see note)", ["fit R1"]],
    ["[R1] (4k7)", ["fit R1"]],
    ["[R1]: solder it flat", ["fit R1"]],
    ["text\n[R1]: done", ["fit R1"]],
    ["[R1]\n\n[R1]: /url", []],
    ["[r1]\n\n[R1]: /url", []],
    ["[R1][d]\n\n[d]: /url", []],
    ["[R1][d] [R1] [R2]\n\n[R1]: /url", ["fit R1", "fit R2"]],
    ["[^R1]\n\n[^R1]: note", []],
    ["- [x] [R1]", ["fit R1"]],
    ["`[R1]`", []],
    ["    [R1]", []],
    ["<b title='[R1]'>[R2]</b>", ["fit R2"]],
    ["<https://a.b/[R1]>", []],
    ["\\[R1] \\{VCC}", []],
    ["&#91;R1]", []],
    ["[text [R1] more](url)", ["fit R1"]],
  ])("%j", (text, expected) => {
    expect(marksOf(text)).toEqual(expected);
  });
});

describe("marks bind tighter than emphasis", () => {
  test.each([
    ["*[R1]*", ["fit R1"]],
    ["*a [6 * M3x10] b*", ["fit 6 of M3x10"]],
    ["[6*M3x10, 4*M3x6]", ["fit 6 of M3x10 | 4 of M3x6"]],
    ["~~[R1~R4]~~", ["fit R1..R4(4)"]],
    ["*a [later: R1*, R2]", []],
  ])("%s", (text, expected) => {
    expect(marksOf(text)).toEqual(expected);
  });

  test("and so do figures", () => {
    expect(dialectTexts("*a {2*V*I} b*")).toEqual(["{2*V*I}"]);
  });

  test("a fix puts × or spaces where plain renderers would emphasise", () => {
    const root = parseMarkdown("[6*M3x10, 4*M3x6] {2*V*I} {2 * V * I}", NO_LABELS);
    expect(syntaxProblems(root).map(({ suggestion }) => suggestion!.text)).toEqual([
      " × ",
      " × ",
      "2 * V * I",
    ]);
  });
});

describe("figures", () => {
  test.each([
    ["{VCC} {{VCC}} {%VCC} {#VCC} {.VCC} {:VCC} $" + "{VCC}", ["{VCC}"]],
    ["| {a | b} |\n| - | - |\n| {VCC} | x |", ["{VCC}"]],
    ["![x](y){width=50%} [x](y){width=50%}", []],
    ["{read V < 5 V} {read V(TP1) <50 mV} {V <b> 5}", ["{read V < 5 V}", "{read V(TP1) <50 mV}"]],
    ["{read V(TP1) &lt; 50 mV}", ["{read V(TP1) &lt; 50 mV}"]],
    ["{read <b> 5}", []],
    ["`{VCC}` {a `b} c` {a [R1] b}", ["[R1]"]],
    ["[own: {VCC}]", ["{VCC}", "[own: {VCC}]"]],
  ])("%j", (text, expected) => {
    expect(dialectTexts(text)).toEqual(expected);
  });
});

describe("labels that other pieces define", () => {
  const elsewhere = { labels: ["R1", "A B"], footnotes: ["NOTE"] };

  test.each([
    ["[R1] [R2]", ["fit R2"]],
    ["> - [R1]", []],
    ["1. [r1][]", []],
    ["[a\nb] [^note]", []],
    ["[x][R1]", []],
    ["\n\n# [R1] [R3]", ["fit R3"]],
    ["[^note]: own text [R4]", ["fit R4"]],
  ])("count as defined in %j", (text, expected) => {
    expect(marksOf(text, elsewhere)).toEqual(expected);
  });

  test("are given by the piece that defines them, as they are looked up", () => {
    const text = "[R1]: /a\n\n> [a  B]: /b\n\n[^Note]: text\n\n[ẞ]: /c";
    const { links, footnotes } = definedLabels(parseMarkdown(text, NO_LABELS));
    expect({ links, footnotes }).toEqual({ links: ["R1", "A B", "SS"], footnotes: ["NOTE"] });
    expect(marksOf("[a b] [ß] [R1] [^note]", { labels: links, footnotes })).toEqual([]);
  });

  test("do not last beyond one parse", () => {
    marksOf("[R1]: /a\n\n[^b]: c", elsewhere);
    expect(marksOf("[R1] [^b]")).toEqual(["fit R1"]);
  });
});

describe("definitions and links that were meant as marks", () => {
  test("are reported at their place", () => {
    const text = "> [R1]: done\n\nx [R2–R4](4k7) [docs](4k7)\n\n[docs]: x\n\n[R5]: https://a.b/c";
    const problems = definitionProblems(parseMarkdown(text, NO_LABELS));
    expect(problems.map(({ span }) => text.slice(span.start, span.end))).toEqual([
      "[R1]:",
      "[R2–R4](4k7)",
      "[R5]:",
    ]);
  });

  test("are among all problems, in document order", () => {
    const text = "[R1-] [R2](4k7) [R3~R4]\n\n[R5]: done\n\n{VCC = 5 V";
    const places = syntaxProblems(parseMarkdown(text, NO_LABELS)).map(({ span }) =>
      text.slice(span.start, span.end),
    );
    expect(places).toEqual(["R1-", "[R2](4k7)", "~", "[R5]:", "{VCC = 5 V"]);
  });
});
