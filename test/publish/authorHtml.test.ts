/** What authors write as HTML: structure stays, nothing that runs or loads reaches the page. */

import { load } from "cheerio";
import type { Element } from "domhandler";
import fc from "fast-check";
import { expect, test } from "vitest";
import { renderTemplate } from "../../server/src/publish/piece/template.ts";
import { publishFixture } from "./published.ts";

const ALONE = { labels: [], footnotes: [], definitions: [] };

/** The template with its holes as `□`. */
function render(text: string): string {
  const { blocks } = renderTemplate(text, ALONE);
  return blocks
    .map(({ html }) => html.map((one) => (typeof one === "string" ? one : "□")).join(""))
    .join("\n");
}

test.each([
  ["<script>alert(1)</script>", "alert"],
  ["a <img src=x onerror=alert(1)> b", "onerror"],
  ["[x](javascript:alert(1))", "javascript"],
  ['<a href="JaVaScRiPt:alert(1)">x</a>', "alert"],
  ['<a href="vbscript:x">x</a>', "vbscript"],
  ['<iframe src="https://example.com"></iframe>', "iframe"],
  ["<svg onload=alert(1)><style>p{}</style></svg>", "onload"],
  ['<p style="position:fixed">x</p>', "style"],
  ["<form action=x><input name=y></form>", "input"],
  ["<meta http-equiv=refresh content=0>", "meta"],
  ['<div class="forced" id="step-1-1">x</div>', "forced"],
  ["<details open ontoggle=alert(1)>x</details>", "ontoggle"],
  ["<math><mtext><style><img src=x onerror=alert(1)></style></mtext></math>", "onerror"],
  ['<noscript><p title="</noscript><img src=x onerror=alert(1)>"></noscript>', "<img"],
  ['<kitquill-hole data-index="0">x</kitquill-hole> [R1]', "hole"],
])("%s leaves no %s", (source, unwanted) => {
  expect(render(source)).not.toContain(unwanted);
});

test.each([
  ["H<sub>2</sub>O", "<p>H<sub>2</sub>O</p>"],
  ["<kbd>Ctrl</kbd>", "<p><kbd>Ctrl</kbd></p>"],
  ["a<br>b", "<p>a<br>b</p>"],
  [
    "<details><summary>More</summary>\n\ntext\n\n</details>",
    "<details><summary>More</summary>\n<p>text</p>\n</details>",
  ],
])("%s is kept", (source, kept) => {
  expect(render(source)).toBe(kept);
});

test("a step is not swallowed by an element left open", () => {
  const { blocks } = renderTemplate("<div>\n\ntext\n\n1. Fit [R1].\n", ALONE);
  expect(blocks.map(({ kind }) => kind)).toEqual(["block", "item"]);
});

test("signs that stand for holes cannot be forged", () => {
  for (const forged of [
    "\uFDD00\uFDD1",
    "&#xFDD0;0&#xFDD1;",
    '<b title="&#xFDD0;0&#xFDD1;">x</b>',
  ]) {
    // The mark, and the number of the step that it makes.
    expect(render(`${forged} <i>y</i> [R1]`).match(/□/g)).toHaveLength(2);
  }
});

test("deep and endless HTML ends", () => {
  const deep = render(`${"<div>".repeat(20_000)}x`);
  expect(deep).toContain("x");
  expect(render(`a ${"<b>".repeat(5000)} c`)).toContain("c");
});

const SCRAPS = [
  "<b>",
  "</b>",
  "<div>",
  "</div>",
  "<img src=x onerror=y>",
  "<a href='javascript:x'>",
  "</a>",
  "<script>",
  "</script>",
  "<!--",
  "-->",
  "<table>",
  "<td>",
  "\n\n",
  "\n",
  "1. ",
  "> ",
  "- ",
  "`",
  "[R1]",
  "{1 V}",
  "<",
  ">",
  '"',
  "'",
  "&lt;",
  "&#60;",
  "text",
  "![a](b)",
  "\uFDD0",
  "\uFDD1",
  "<svg>",
  "<style>",
  "</style>",
  "<p title='",
];

test("no mix of scraps gives an element or attribute that is not allowed", () => {
  const allowed = new Set(
    "href title class scope role start lang dir open colspan rowspan rel reversed".split(" "),
  );
  fc.assert(
    fc.property(fc.array(fc.constantFrom(...SCRAPS), { maxLength: 25 }), (scraps) => {
      const $ = load(render(scraps.join("")), null, false);
      for (const element of $("*").toArray() as Element[]) {
        expect(element.tagName).not.toMatch(/script|style|svg|iframe|img|input|form|object|hole/);
        for (const [name, value] of Object.entries(element.attribs)) {
          expect(allowed.has(name)).toBe(true);
          if (name === "href") expect(value).not.toMatch(/^\s*javascript/i);
        }
      }
    }),
    { numRuns: 1500 },
  );
});

test("pictures come from the workspace, others are told of and not loaded", async () => {
  const published = await publishFixture(
    '---\ntitle: A\nparts: p.csv\n---\n## A\n\n1. Fit [R1].\n\n   ![board](board.svg)\n\n   ![far](https://example.com/x.png)\n\n   ![gone](gone.png)\n\n   <img src="board.svg" width="40" alt="small">\n--- file: p.csv\nDesignator,Value\nR1,1k\n--- file: board.svg\n<svg xmlns="http://www.w3.org/2000/svg"/>\n',
    ["guide"],
  );
  const $ = published.page();
  const images = $(".step img")
    .toArray()
    .map((one) => $(one).attr());
  expect(images.map((one) => one?.alt)).toEqual(["board", "small"]);
  expect(images[1]?.width).toBe("40");
  expect(images[0]?.src).toMatch(/^data:image\/svg\+xml;base64,/);
  expect($(".step .missing").text()).toContain("gone");
  expect($('.step a[href="https://example.com/x.png"]').text()).toContain("far");
});
