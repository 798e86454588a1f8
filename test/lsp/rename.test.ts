import { afterEach, describe, expect, test } from "vitest";
import type { Range, TextDocumentEdit, WorkspaceEdit } from "vscode-languageserver";
import { LineIndex } from "../../server/src/text/lines.ts";
import { applyEdits } from "../../server/src/text/span.ts";
import { FOLDER, TestClient } from "./client.ts";

const LIST = "Designator,Value\nR1,4k7\nR2,1k\n";
const GUIDE = "---\ntitle: T\nparts: parts.csv\n---\n\n## A\n\n1. Solder [R1], R1.\n";
const OTHER = "---\nparts: parts.csv\n---\n\n1. As [R1–R2].\n";
const CAPABILITIES = {
  textDocument: { rename: { prepareSupport: true } },
  workspace: { workspaceEdit: { changeAnnotationSupport: {} } },
};

let client: TestClient;

async function started(
  files: Readonly<Record<string, string | Uint8Array>>,
  capabilities = CAPABILITIES,
) {
  client = new TestClient({});
  for (const [name, content] of Object.entries(files)) client.files.set(FOLDER + name, content);
  await client.start({}, capabilities);
  await client.open("guide.md", GUIDE);
}

afterEach(() => client.stop());

function rename(name: string, line: number, character: number, newName: string) {
  return client.connection.sendRequest<WorkspaceEdit>("textDocument/rename", {
    textDocument: { uri: FOLDER + name },
    position: { line, character },
    newName,
  });
}

/** The files after the edit. */
function applied(edit: WorkspaceEdit, files: Readonly<Record<string, string>>) {
  const after: Record<string, string> = {};
  for (const { textDocument, edits } of edit.documentChanges as TextDocumentEdit[]) {
    const name = textDocument.uri.slice(FOLDER.length);
    const text = files[name]!;
    const lines = new LineIndex(text);
    const offset = ({ line, character }: Range["start"]) =>
      lines.offsetAt({ line, column: character });
    after[name] = applyEdits(
      text,
      edits.map((one) => {
        const { range, newText } = one as { range: Range; newText: string };
        return { span: { start: offset(range.start), end: offset(range.end) }, text: newText };
      }),
    );
  }
  return after;
}

describe("renaming a part", () => {
  test("changes the guide, its list and every other guide on the list, with annotations", async () => {
    await started({ "parts.csv": LIST, "other.md": OTHER, "notes.md": "R1\n" });
    const edit = await rename("guide.md", 7, 12, "R9");
    expect(applied(edit, { "guide.md": GUIDE, "parts.csv": LIST, "other.md": OTHER })).toEqual({
      "guide.md": GUIDE.replaceAll("R1", "R9"),
      "parts.csv": LIST.replace("R1", "R9"),
      "other.md": OTHER.replace("R1–R2", "R9, R2"),
    });
    expect(Object.values(edit.changeAnnotations!).map(({ label }) => label)).toEqual([
      "In the parts list",
      "In marks",
      "In the text",
    ]);
    const versions = (edit.documentChanges as TextDocumentEdit[]).map(
      ({ textDocument: { uri, version } }) => [uri.slice(FOLDER.length), version],
    );
    expect(versions).toEqual([
      ["parts.csv", null],
      ["guide.md", 1],
      ["other.md", null],
    ]);
  });

  test("shows no findings of guides that nobody has open", async () => {
    await started({ "parts.csv": LIST, "other.md": OTHER.replace("R1–R2", "R1–R7") });
    await rename("guide.md", 7, 12, "R9");
    await client.settled();
    expect(client.log.filter(({ uri }) => uri.endsWith("other.md"))).toEqual([]);
  });

  test("starts from the list as well, and from a text that the editor has changed", async () => {
    await started({ "parts.csv": LIST });
    await client.open("parts.csv", LIST);
    await client.change("guide.md", 7, 0, 0, "  \n");
    const edit = await rename("parts.csv", 1, 1, "R9");
    const text = GUIDE.replace("1. S", "  \n1. S");
    expect(applied(edit, { "guide.md": text, "parts.csv": LIST })["guide.md"]).toBe(
      text.replaceAll("R1", "R9"),
    );
  });

  test("without annotations for a client that knows none", async () => {
    await started({ "parts.csv": LIST }, { ...CAPABILITIES, workspace: {} as never });
    const edit = await rename("guide.md", 7, 12, "R9");
    expect(edit.changeAnnotations).toBeUndefined();
    expect(JSON.stringify(edit)).not.toContain("annotationId");
  });

  test("tells what will be renamed, and refuses where nothing can", async () => {
    await started({ "parts.csv": LIST });
    expect(await client.ask("textDocument/prepareRename", "guide.md", 7, 11)).toEqual({
      range: { start: { line: 7, character: 11 }, end: { line: 7, character: 13 } },
      placeholder: "R1",
    });
    expect(await client.ask("textDocument/prepareRename", "guide.md", 7, 5)).toBeNull();
    await client.change("guide.md", 7, 11, 13, "R77");
    await expect(client.ask("textDocument/prepareRename", "guide.md", 7, 12)).rejects.toThrow(
      "The parts list has no R77",
    );
    await expect(rename("parts.csv", 1, 1, "R9")).resolves.toBeNull();
  });

  test("is refused where the name is taken, in this guide or another", async () => {
    const other = "---\nparts: [parts.csv, more.csv]\n---\n\n1. As [R1–R2].\n";
    await started({
      "parts.csv": LIST,
      "other.md": other,
      "more.csv": "Designator,Value\nR5,5k\nR6,6k\n",
    });
    await expect(rename("guide.md", 7, 12, "R2")).rejects.toThrow("has a R2 already");
    await expect(rename("guide.md", 7, 12, "R5")).rejects.toThrow("has a R5 already");
  });

  // Editors take a file without mark for UTF-8: 0xB5, a µ in Windows-1252, would become U+FFFD.
  test.each([
    [
      "an 8-bit encoding",
      Uint8Array.from([...Buffer.from(LIST), 0x43, 0x31, 0x2c, 0x31, 0xb5, 0x0a]),
    ],
    ["UTF-16 without a mark", new Uint8Array(Buffer.from(LIST, "utf16le"))],
    ["line ends of two kinds", new TextEncoder().encode(LIST.replace("\n", "\r\n"))],
    ["line ends of an old kind", new TextEncoder().encode(LIST.replaceAll("\n", "\r"))],
  ])("is refused where the list is closed and in %s", async (_, bytes) => {
    await started({ "parts.csv": bytes });
    await expect(rename("guide.md", 7, 12, "R9")).rejects.toThrow(
      /^`parts\.csv` cannot be changed: its? .*\. Other bytes of it would change, too\.$/,
    );
  });

  test.each([
    ["with a byte-order mark", new TextEncoder().encode(`\uFEFF${LIST}`)],
    ["in UTF-16 with its mark", new Uint8Array(Buffer.from(`\uFEFF${LIST}`, "utf16le"))],
    ["with CRLF", new TextEncoder().encode(LIST.replaceAll("\n", "\r\n"))],
  ])("works where the list is %s", async (_, bytes) => {
    await started({ "parts.csv": bytes });
    const edit = await rename("guide.md", 7, 12, "R9");
    expect(JSON.stringify(edit)).toContain(
      '{"range":{"start":{"line":1,"character":0},"end":{"line":1,"character":2}},"newText":"R9"',
    );
  });

  test("is refused where the text has changed while other guides were read", async () => {
    await started({ "parts.csv": LIST, "other.md": OTHER });
    const read = client.files.read.bind(client.files);
    client.files.read = async (uri) => {
      if (uri.endsWith("other.md")) {
        await client.change("guide.md", 7, 0, 0, "x");
        await client.settled();
      }
      return read(uri);
    };
    await expect(rename("guide.md", 7, 12, "R9")).rejects.toThrow("The text has changed meanwhile");
  });

  test("is refused where the editor holds characters that it could not read", async () => {
    await started({ "parts.csv": LIST });
    await client.open("parts.csv", `${LIST}C1,1\uFFFD\n`);
    await expect(rename("guide.md", 7, 12, "R9")).rejects.toThrow("could not be read");
  });
});
