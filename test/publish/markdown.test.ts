/** The guide as plain Markdown, read by an independent parser: nothing of the dialect is left in it. */
import type { Nodes } from "mdast";
import remarkFrontmatter from "remark-frontmatter";
import remarkGfm from "remark-gfm";
import remarkParse from "remark-parse";
import { unified } from "unified";
import { describe, expect, test } from "vitest";
import { fixture } from "../fixture.ts";
import { type Published, publishFiles, publishSample, seen } from "./published.ts";

const LIST = "--- file: p.csv\nDesignator,Value,Qty\nR1,1k,1\nR2,1k,1\nC1,100n,1\n,M3x6,4\n";

function guide(body: string, head = ""): string {
  return `---\ntitle: Wren\nparts: p.csv\n${head}---\n${body}\n${LIST}`;
}

async function markdownOf(text: string): Promise<string> {
  return (await publishFiles(fixture(text).files, "guide.md", ["markdown"])).text("guide.md");
}

/** The tree that a hosting site would make of it. */
function parse(text: string): Nodes {
  return unified().use(remarkParse).use(remarkFrontmatter).use(remarkGfm).parse(text);
}

function all(node: Nodes): Nodes[] {
  return [node, ...("children" in node ? node.children.flatMap((child) => all(child)) : [])];
}

function wordsOf(node: Nodes): string {
  return all(node)
    .map((one) => (one.type === "text" ? one.value : ""))
    .join("");
}

describe.each([
  ["heron", "heron.md"],
  ["constructs", "guide.md"],
])("%s", (folder, name) => {
  let published: Published;
  let nodes: Nodes[];
  test("leaves no mark, figure, comment or front matter", async () => {
    published = await publishSample(folder, name, ["markdown"]);
    nodes = all(parse(published.text("guide.md")));
    const texts = nodes.map((node) => (node.type === "text" ? node.value : ""));
    // The sample shows escaped brackets as text on purpose.
    const left = texts.join("\n").replaceAll("[R1]", "");
    expect(left).not.toMatch(/\[(?:[A-Z]+\d|\w+:)|[{}]/);
    const html = nodes.filter(({ type }) => type === "html" || type === "yaml");
    expect(html.map((node) => "value" in node && node.value)).toEqual([
      "<!-- Made by Kitquill from the guide's source: change that, not this. -->",
    ]);
  });

  test("numbers every step once, in order, before its text", () => {
    const numbers = nodes
      .filter((node) => node.type === "strong")
      .map((node) => wordsOf(node))
      .filter((text) => /^\d+(?:\.\d+)+$/.test(text));
    const steps = published.guide.stages.flatMap(({ steps }) => steps.map(({ number }) => number));
    expect(numbers).toEqual(steps);
  });

  test("keeps each caution before the step that it stands before", () => {
    const cautions = nodes.filter(
      (node) => node.type === "blockquote" && /^(?:[A-Z]{6,7}: |\[!)/.test(wordsOf(node)),
    );
    const facts = published.guide.pieces.flatMap((piece) =>
      piece.facts.facts.filter(({ kind }) => kind === "note").map((fact) => ({ piece, fact })),
    );
    expect(cautions).toHaveLength(facts.length);
    const text = published.text("guide.md");
    for (const [index, { piece, fact }] of facts.entries()) {
      const { span } = fact as { span: { start: number } };
      const next = piece.steps.find((step) => step.fact.span.start > span.start);
      if (!next) continue;
      const at = cautions[index]!.position!.start.offset!;
      expect(at).toBeLessThan(text.indexOf(`**${next.number}** `));
    }
  });

  test("has each part of the list in a table of its stage", () => {
    const cells = nodes
      .filter(({ type }) => type === "tableCell")
      .map((node) => seen(wordsOf(node)));
    const first = published.guide.parts.find(({ fitted }) => fitted)!;
    expect(cells.some((cell) => new RegExp(`\\b${first.name}\\b`).test(cell))).toBe(true);
  });
});

test("what belongs to an item stays in it, whatever its marker was", async () => {
  const text = await markdownOf(
    guide(
      "## A\n\n9. Fit [R1].\n\n   More.\n10. Fit [R2].\n\n    ```\n    code\n    ```\n    1. Fit [C1].\n\n1000. Look.",
    ),
  );
  const items = all(parse(text)).filter(({ type }) => type === "listItem");
  expect(items.map((node) => seen(wordsOf(node)))).toEqual([
    "1.1 Fit R1.More.",
    "1.2 Fit R2.1.2.1 Fit C1.",
    "1.2.1 Fit C1.",
    "1.3 Look.",
  ]);
  expect(all(parse(text)).filter(({ type }) => type === "code")).toHaveLength(1);
});

test.each([
  ["Fit both. [R1] [R2] Go on.", "Fit both. (R1) (R2) Go on."],
  ["Fit [R1, R2 = 1k] now.", "Fit R1, R2 = 1k now."],
  ["Take a [tool: clip lead] and [own: glue].", "Take a clip lead and glue."],
  ["Solder. [tool: iron] [#here]", "Solder. (iron)"],
  ["See [see: last], then fit [C1].", "See 1.2, then fit C1."],
  ["Set {VCC = 5 V ± 5 %} and read {read V(TP1) < 50 mV}.", "Set 5 V and read < 50 mV."],
  ["Touching: [R1][R2]{U = 5 V}{I = 2 A}", "Touching: R1 R2 5 V 2 A"],
  ["Fit [all R].", "Fit R1, R2."],
])("%s", async (step, shown) => {
  const text = await markdownOf(guide(`## A\n\n1. ${step}\n2. The last. [#last]`));
  const item = all(parse(text)).find(({ type }) => type === "listItem")!;
  expect(seen(wordsOf(item))).toBe(`1.1 ${shown}`);
});

test("texts of the list mean nothing to Markdown", async () => {
  const text = await markdownOf(
    `---\nparts: p.csv\n---\n## A\n\n1. Fit [R1].\n--- file: p.csv\nDesignator,Value,Description\nR1,*1k*|<b>,[x](y)\n`,
  );
  const cells = all(parse(text)).filter(({ type }) => type === "tableCell");
  expect(cells.map((node) => wordsOf(node))).toContain("*1k*|<b>");
  expect(all(parse(text)).some(({ type }) => type === "emphasis" || type === "link")).toBe(false);
});

test("labels that two pages define mean what their page says", async () => {
  const page = (name: string) =>
    `## ${name}\n\n1. Fit [R${name === "A" ? 1 : 2}], see [the page][doc], [doc], [doc][], [own ${name}] and notes[^1][^${name}].\n\n[doc]: https://example.com/${name}\n[own ${name}]: https://example.com/own\n\n[^1]: Note ${name}.\n\n[^${name}]: Own.\n`;
  const text = await markdownOf(
    `---\nparts: p.csv\npages: [b.md]\n---\n${page("A")}\n--- file: b.md\n${page("B")}${LIST}`,
  );
  const nodes = all(parse(text));
  const definitions = nodes.flatMap((node) =>
    node.type === "definition" ? [[node.identifier, node.url]] : [],
  );
  expect(definitions).toEqual([
    ["doc", "https://example.com/A"],
    ["own a", "https://example.com/own"],
    ["doc-2", "https://example.com/B"],
    ["own b", "https://example.com/own"],
  ]);
  const links = nodes.flatMap((node) => (node.type === "linkReference" ? [node.identifier] : []));
  const own = (doc: string, name: string) => [doc, doc, doc, `own ${name}`];
  expect(links).toEqual([...own("doc", "a"), ...own("doc-2", "b")]);
  const notes = nodes.flatMap((node) =>
    node.type === "footnoteReference" ? [node.identifier] : [],
  );
  expect(notes).toEqual(["1", "a", "1-2", "b"]);
});

test("pictures lie beside, also those that a definition names", async () => {
  const text = `---\nparts: p.csv\n---\n## A\n\n1. Fit [R1].\n\n   ![front](board.svg "Front")\n\n   ![back][b]\n\n   ![far](https://example.com/x.png)\n\n[b]: board.svg\n--- file: board.svg\n<svg xmlns="http://www.w3.org/2000/svg"/>\n${LIST}`;
  const published = await publishFiles(fixture(text).files, "guide.md", ["markdown"]);
  const [picture] = published.files.filter(({ name }) => name.startsWith("pictures/"));
  const images = all(parse(published.text("guide.md"))).flatMap((node) =>
    node.type === "image" ? [[node.alt, node.url, node.title]] : [],
  );
  expect(images).toEqual([
    ["front", picture!.name, "Front"],
    ["back", picture!.name, null],
    ["far", "https://example.com/x.png", null],
  ]);
});
