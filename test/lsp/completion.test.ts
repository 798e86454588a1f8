import { afterEach, expect, test } from "vitest";
import type { CompletionItem, CompletionList } from "vscode-languageserver";
import { TestClient } from "./client.ts";

const LIST = "Designator,Quantity,Value,Footprint\nR1–R4,4,4k7,R_Axial_DIN0207_L6.3mm_D2.5mm\n";
const GUIDE = "---\ntitle: T\nparts: parts.csv\n---\n\n## A\n\n1. Solder .\n";

let client: TestClient;

async function complete(name: string, text: string, line: number, character: number) {
  await client.open(name, text);
  return client.ask<CompletionList | null>("textDocument/completion", name, line, character);
}

afterEach(() => client.stop());

test("the server offers parts with ranges, labels and documentation", async () => {
  client = new TestClient({ "parts.csv": LIST });
  const completion = { completionItem: { labelDetailsSupport: true } };
  await client.start({}, { textDocument: { completion } });
  const list = await complete("guide.md", GUIDE.replace(" .", " [R2]."), 7, 12);
  const [range] = list!.items;
  expect(range).toMatchObject({
    label: "R1–R4",
    labelDetails: { detail: "  4k7", description: "R_Axial_DIN0207_L6.3mm_D2.5mm · 2.5 mm" },
    sortText: "0",
  });
  const resolved = await client.connection.sendRequest<CompletionItem>(
    "completionItem/resolve",
    range,
  );
  expect(JSON.stringify(resolved.documentation)).toContain("Body height 2.5 mm");
});

test("a client without label details gets them in one line, and its own command to go on", async () => {
  client = new TestClient({ "parts.csv": LIST });
  await client.start({}, {}, { suggestAgain: "again" });
  const list = await complete("guide.md", GUIDE.replace(" .", " [] here."), 7, 11);
  const range = list!.items.find(({ label }) => label === "R1–R4");
  expect(range).toMatchObject({
    detail: "4k7 · R_Axial_DIN0207_L6.3mm_D2.5mm · 2.5 mm",
    textEdit: {
      newText: "R1–R4",
      range: { start: { line: 7, character: 11 }, end: { line: 7, character: 11 } },
    },
  });
  const later = list!.items.find(({ label }) => label === "later:");
  expect(later).toMatchObject({ command: { command: "again" }, textEdit: { newText: "later: " } });
});

test("nothing in Markdown that is no guide", async () => {
  client = new TestClient({ "parts.csv": LIST });
  await client.start();
  expect(await complete("notes.md", "# Notes\n\n1. Solder [\n", 2, 11)).toBeNull();
});

test("the front matter is offered the files that it may name", async () => {
  const files = { "parts.csv": LIST, "old parts.xlsx": "", "case.md": "# Case\n", "a,b.csv": LIST };
  client = new TestClient(files);
  await client.start();
  const head = "---\nparts: p\npages: c\nlanguage: \n---\n\n# A\n";
  const at = async (line: number, character: number) => {
    const list = await client.ask<CompletionList | null>(
      "textDocument/completion",
      "guide.md",
      line,
      character,
    );
    return list?.items.map(({ textEdit }) => textEdit);
  };
  await client.open("guide.md", head);
  const range = (line: number) => ({ start: { line, character: 7 }, end: { line, character: 8 } });
  expect(await at(1, 8)).toEqual([
    { range: range(1), newText: '"a,b.csv"' },
    { range: range(1), newText: "old parts.xlsx" },
    { range: range(1), newText: "parts.csv" },
  ]);
  expect(await at(2, 8)).toEqual([{ range: range(2), newText: "[case.md]" }]);
});
