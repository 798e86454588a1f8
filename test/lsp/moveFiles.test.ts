import { afterEach, describe, expect, test } from "vitest";
import type {
  InitializeResult,
  Range,
  TextDocumentEdit,
  WorkspaceEdit,
} from "vscode-languageserver";
import { relativePath } from "../../server/src/workspace/paths.ts";
import { FOLDER, TestClient } from "./client.ts";

const LIST = "Designator,Value\nR1,4k7\n";
const GUIDE = "---\nparts: { main: parts.csv }\npages: [more.md]\n---\n\n1. Solder [R1].\n";

let client: TestClient;

afterEach(() => client.stop());

async function started(files: Readonly<Record<string, string>>) {
  client = new TestClient({ "parts.csv": LIST, "more.md": "# More\n", ...files });
  await client.start();
}

function uriOf(name: string): string {
  return FOLDER + name.split("/").map(encodeURIComponent).join("/");
}

/** `file:line:column-column text` of each edit. */
async function moved(...moves: readonly (readonly [string, string])[]): Promise<string[]> {
  const edit = await client.connection.sendRequest<WorkspaceEdit | null>(
    "workspace/willRenameFiles",
    { files: moves.map(([from, to]) => ({ oldUri: uriOf(from), newUri: uriOf(to) })) },
  );
  return ((edit?.documentChanges ?? []) as TextDocumentEdit[]).flatMap(({ textDocument, edits }) =>
    edits.map((one) => {
      const { range, newText } = one as {
        range: Range;
        newText: string;
      };
      const place = `${range.start.line}:${range.start.character}-${range.end.character}`;
      return `${textDocument.uri.slice(FOLDER.length)}:${place} ${newText}`;
    }),
  );
}

describe("moving a file", () => {
  test("changes what the guides say of lists and pages", async () => {
    await started({ "guide.md": GUIDE });
    await client.open("guide.md", GUIDE);
    expect(await moved(["parts.csv", "lists/parts v2.csv"])).toEqual([
      "guide.md:1:15-24 lists/parts v2.csv",
    ]);
    expect(await moved(["more.md", "page two.md"])).toEqual(["guide.md:2:8-15 page two.md"]);
    expect(await moved(["other.csv", "x.csv"])).toEqual([]);
  });

  test("also in guides that nobody has open, and as the editor has the text", async () => {
    await started({ "guide.md": GUIDE, "second.md": "---\nparts: 'parts.csv'\n---\n" });
    await client.open("guide.md", GUIDE);
    await client.change("guide.md", 0, 3, 3, "\ntitle: T");
    expect(await moved(["parts.csv", "bom #1.csv"])).toEqual([
      'guide.md:2:15-24 "bom #1.csv"',
      "second.md:1:8-17 bom #1.csv",
    ]);
  });

  test("keeps the paths of a guide that moves itself", async () => {
    await started({ "guide.md": GUIDE });
    expect(await moved(["guide.md", "guides/wren.md"])).toEqual([
      "guide.md:1:15-24 ../parts.csv",
      "guide.md:2:8-15 ../more.md",
    ]);
    expect(await moved(["guide.md", "wren.md"])).toEqual([]);
  });

  test("keeps the sheet of a workbook", async () => {
    const text = GUIDE.replace("parts.csv", '"bom.xlsx#Main board"');
    await started({ "guide.md": text });
    await client.open("guide.md", text);
    expect(await moved(["bom.xlsx", "lists/bom.xlsx"])).toEqual([
      "guide.md:1:16-35 lists/bom.xlsx#Main board",
    ]);
  });

  test("changes the addresses of pictures, on every page of the guide", async () => {
    const more = "# More\n\n![b](img/b.svg#left)\n\n![web](https://example.org/c.png)\n";
    const text = `${GUIDE}   ![a](<img/a b.png> "A")\n`;
    await started({ "guide.md": text, "more.md": more });
    await client.open("guide.md", text);
    expect(await moved(["img/a b.png", "img/top view (1).png"])).toEqual([
      "guide.md:6:9-20 img/top%20view%20%281%29.png",
    ]);
    expect(await moved(["img", "pictures"])).toEqual([
      "guide.md:6:9-20 pictures/a%20b.png",
      "more.md:2:5-19 pictures/b.svg#left",
    ]);
    expect(await moved(["more.md", "pages/more.md"])).toEqual([
      "guide.md:2:8-15 pages/more.md",
      "more.md:2:5-19 ../img/b.svg#left",
    ]);
  });

  test("a folder takes its files along", async () => {
    const text = GUIDE.replace("parts.csv", "lists/parts.csv");
    await started({ "guide.md": text, "lists/parts.csv": LIST });
    await client.open("guide.md", text);
    expect(await moved(["lists", "data"])).toEqual(["guide.md:1:15-30 data/parts.csv"]);
  });
});

test("the server asks to be told before files are renamed", async () => {
  client = new TestClient({});
  const { capabilities } = await client.connection.sendRequest<InitializeResult>("initialize", {
    processId: null,
    rootUri: null,
    capabilities: {},
  });
  expect(capabilities.workspace?.fileOperations?.willRename?.filters).toHaveLength(2);
});

test.each([
  ["file:///a/b/g.md", "file:///a/b/p.csv", "p.csv"],
  ["file:///a/b/g.md", "file:///a/p.csv", "../p.csv"],
  ["file:///a/b/g.md", "file:///a/c/d/p.csv", "../c/d/p.csv"],
  ["file:///g.md", "file:///c/p.csv", "c/p.csv"],
  ["file:///a/g.md", "vscode-test:///a/p.csv", undefined],
])("from %s to %s it is %s", (from, to, path) => {
  expect(relativePath(from, to)).toBe(path);
});
