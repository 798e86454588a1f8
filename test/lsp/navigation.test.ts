import { afterEach, beforeEach, expect, test } from "vitest";
import type {
  CodeLens,
  DocumentHighlight,
  DocumentLink,
  DocumentSymbol,
  FoldingRange,
  Location,
  SelectionRange,
  SymbolInformation,
} from "vscode-languageserver";
import { FOLDER, TestClient } from "./client.ts";

const LIST = "Designator,Value\nR1,4k7\nR2,1k\n";
const GUIDE =
  "---\ntitle: T\nparts: parts.csv\n---\n\n## A\n\n1. Solder [R1].\n   ![pic](a b.png)\n2. As R1, [see: x].\n3. [#x] Rest [R2].\n";

let client: TestClient;

beforeEach(async () => {
  client = new TestClient({ "parts.csv": LIST });
  const documentSymbol = { hierarchicalDocumentSymbolSupport: true };
  await client.start({}, { textDocument: { documentSymbol } }, { goTo: "go" });
  await client.open("guide.md", GUIDE);
  await client.open("parts.csv", LIST);
});

afterEach(() => client.stop());

function request<Result>(method: string, name: string, more: object = {}): Promise<Result> {
  return client.connection.sendRequest(method, {
    textDocument: { uri: FOLDER + name },
    ...more,
  });
}

test("references, with and without the place where the part is listed", async () => {
  const ask = (includeDeclaration: boolean) =>
    request<Location[]>("textDocument/references", "guide.md", {
      position: { line: 7, character: 12 },
      context: { includeDeclaration },
    });
  const brief = (found: Location[]) =>
    found.map(({ uri, range }) => `${uri.slice(FOLDER.length)}:${range.start.line}`);
  expect(brief(await ask(true))).toEqual(["parts.csv:1", "guide.md:7", "guide.md:9"]);
  expect(brief(await ask(false))).toEqual(["guide.md:7", "guide.md:9"]);
});

test("highlights in the page and in the list", async () => {
  const inPage = await client.ask<DocumentHighlight[]>(
    "textDocument/documentHighlight",
    "guide.md",
    9,
    7,
  );
  expect(inPage.map(({ range, kind }) => [range.start.line, kind])).toEqual([
    [7, 3],
    [9, 2],
  ]);
  expect(await client.ask("textDocument/documentHighlight", "parts.csv", 1, 0)).toHaveLength(1);
});

test("outline, folds, links and growing selections", async () => {
  const [stage] = await request<DocumentSymbol[]>("textDocument/documentSymbol", "guide.md");
  expect(stage).toMatchObject({ name: "1 A", range: { start: { line: 5 }, end: { line: 10 } } });
  expect(stage!.children).toHaveLength(3);
  const folds = await request<FoldingRange[]>("textDocument/foldingRange", "guide.md");
  expect(folds).toEqual([
    { startLine: 0, endLine: 3 },
    { startLine: 5, endLine: 10 },
    { startLine: 7, endLine: 8 },
  ]);
  const links = await request<DocumentLink[]>("textDocument/documentLink", "guide.md");
  expect(links.map(({ target }) => target)).toEqual([
    `${FOLDER}parts.csv`,
    `${FOLDER}guide.md#L11,6`,
  ]);
  const [selection] = await request<SelectionRange[]>("textDocument/selectionRange", "guide.md", {
    positions: [{ line: 7, character: 12 }],
  });
  expect(selection!.range).toEqual({
    start: { line: 7, character: 11 },
    end: { line: 7, character: 13 },
  });
  expect(selection!.parent!.range.start.character).toBe(10);
});

test("pictures are linked as a reader's program follows their addresses, and no other schemes", async () => {
  const addresses = ["img/top%20side.png?raw#x", "https://kit.example/a.png", "100%.png"];
  const unsafe = ["//kit.example/a.png", "data:image/png,x", "command:go"];
  const pictures = [...addresses, ...unsafe].map((address) => `![a](${address})`).join("\n");
  await client.open("pictures.md", `---\nparts: parts.csv\n---\n\n${pictures}\n`);
  const links = await request<DocumentLink[]>("textDocument/documentLink", "pictures.md");
  expect(links.map(({ target }) => target)).toEqual([
    `${FOLDER}parts.csv`,
    `${FOLDER}img/top%20side.png`,
    "https://kit.example/a.png",
  ]);
});

test("lenses lead from a line of the list to its step", async () => {
  const [onStage] = await request<CodeLens[]>("textDocument/codeLens", "guide.md");
  expect(onStage!.command?.title).toBe("2 parts · 2 of 2 fitted");
  const [first] = await request<CodeLens[]>("textDocument/codeLens", "parts.csv");
  expect(first!.command).toMatchObject({
    title: "Step 1.1",
    command: "go",
    arguments: [{ uri: `${FOLDER}guide.md`, range: { start: { line: 7, character: 11 } } }],
  });
});

test("parts and stages by name", async () => {
  const found = await client.connection.sendRequest<SymbolInformation[]>("workspace/symbol", {
    query: "R",
  });
  expect(found.map(({ name, location }) => `${name} ${location.uri.slice(FOLDER.length)}`)).toEqual(
    ["R1 parts.csv", "R2 parts.csv"],
  );
});

test("nothing in Markdown that is no guide", async () => {
  await client.open("notes.md", "# Notes\n\n## A\n\n1. Solder [R1].\n");
  expect(await request("textDocument/documentSymbol", "notes.md")).toBeNull();
  expect(await request("textDocument/foldingRange", "notes.md")).toBeNull();
  expect(await request("textDocument/codeLens", "notes.md")).toBeNull();
  expect(await request("textDocument/documentLink", "notes.md")).toBeNull();
});
