import { afterEach, describe, expect, test } from "vitest";
import type { CodeAction, ConfigurationParams, Hover, Location } from "vscode-languageserver";
import { FOLDER, TestClient } from "./client.ts";

const LIST = "Designator,Quantity,Value,Footprint\nR1,1,4k7,R_Axial_DIN0207_L6.3mm_D2.5mm\n";
const GUIDE =
  "---\nchecks: { hazard-missing: off }\nparts: parts.csv\n---\n\n## A\n\n1. Solder [R1].\n";
const FORGETFUL = GUIDE.replace("[R1]", "nothing");

let client: TestClient;

async function started(files: Readonly<Record<string, string>> = { "parts.csv": LIST }) {
  client = new TestClient(files);
  await client.start();
}

afterEach(() => client.stop());

describe("the server", () => {
  test("publishes findings for the guide and for its list, with the version", async () => {
    await started();
    await client.open("guide.md", FORGETFUL);
    expect(await client.findings("guide.md")).toEqual(["2:0 missing-part"]);
    expect(await client.findings("parts.csv")).toEqual(["1:0 missing-part"]);
    expect(client.published.get("guide.md")?.version).toBe(1);
    expect(client.published.get("parts.csv")?.version).toBeUndefined();
  });

  test("leads from a code to the page of its check where the client can show it", async () => {
    client = new TestClient({ "parts.csv": LIST });
    await client.start({}, {}, { explain: "show.check" });
    await client.open("guide.md", FORGETFUL);
    expect(await client.findings("guide.md")).toEqual(["2:0 missing-part"]);
    const [finding] = client.published.get("guide.md")!.diagnostics;
    expect(finding?.codeDescription?.href).toBe("command:show.check?%5B%22missing-part%22%5D");
    const [inList] = client.published.get("parts.csv")!.diagnostics;
    expect(inList?.codeDescription).toEqual(finding?.codeDescription);
  });

  test("follows typing, and publishes only what is current", async () => {
    await started();
    await client.open("guide.md", FORGETFUL);
    await client.change("guide.md", 7, 10, 17, "[R1");
    await client.change("guide.md", 7, 13, 13, "]");
    expect(await client.findings("guide.md")).toEqual([]);
    expect(await client.findings("parts.csv")).toEqual([]);
    const versions = client.log
      .filter(({ uri }) => uri === `${FOLDER}guide.md`)
      .map(({ version }) => version ?? 0);
    expect(versions).toEqual([...versions].sort((a, b) => a - b));
  });

  test("checks the guide again when its list changes on disk, in the editor, or goes", async () => {
    await started();
    await client.open("guide.md", GUIDE);
    expect(await client.findings("guide.md")).toEqual([]);
    await client.changeFile("parts.csv", LIST.replace("R1,1", "Q5,1"));
    expect(await client.findings("guide.md")).toEqual(["2:0 missing-part", "7:11 unknown-part"]);
    await client.open("parts.csv", LIST);
    expect(await client.findings("guide.md")).toEqual([]);
    await client.close("parts.csv");
    expect(await client.findings("guide.md")).toEqual(["2:0 missing-part", "7:11 unknown-part"]);
    await client.changeFile("parts.csv", undefined);
    expect(await client.findings("guide.md")).toEqual(["2:7 unreadable-list"]);
    expect(await client.findings("parts.csv")).toEqual([]);
  });

  test("clears the findings of a guide that is closed or is none any more", async () => {
    await started();
    await client.open("guide.md", FORGETFUL);
    await client.change("guide.md", 2, 0, 5, "party");
    expect(await client.findings("guide.md")).toEqual([]);
    await client.change("guide.md", 2, 0, 5, "parts");
    expect(await client.findings("guide.md")).toEqual(["2:0 missing-part"]);
    await client.close("guide.md");
    expect(await client.findings("guide.md")).toEqual([]);
    expect(await client.findings("parts.csv")).toEqual([]);
  });

  test("leaves Markdown without the key `parts` alone", async () => {
    await started();
    await client.open("notes.md", "# Notes\n\n1. [R9] and {VCC\n");
    await client.settled();
    expect(client.log).toEqual([]);
  });

  test("finds the guide that a page belongs to", async () => {
    const guide = FORGETFUL.replace("parts: parts.csv", "parts: parts.csv\npages: [more.md]");
    await started({ "parts.csv": LIST, "guide.md": guide, "more.md": "## B\n\n1. [R7]\n" });
    await client.open("more.md", "## B\n\n1. [R7]\n");
    expect(await client.findings("more.md")).toEqual(["2:4 unknown-part"]);
    await client.close("more.md");
    expect(await client.findings("more.md")).toEqual([]);
  });

  test("tells of a part under the cursor, in the guide and in the list", async () => {
    await started();
    await client.open("guide.md", GUIDE);
    await client.open("parts.csv", LIST);
    const inGuide = await client.ask<Hover>("textDocument/hover", "guide.md", 7, 12);
    expect(inGuide.contents).toMatchObject({ kind: "markdown" });
    const text = JSON.stringify(inGuide.contents);
    expect(text).toContain("R1");
    expect(text).toContain("4k7");
    expect(text).toContain("2.5 mm");
    expect(text).toContain("Fitted in step 1.1.");
    const inList = await client.ask<Hover>("textDocument/hover", "parts.csv", 1, 1);
    expect(JSON.stringify(inList.contents)).toContain("Fitted in step 1.1.");
  });

  test("leads from a part to its cell and from the cell to the step", async () => {
    await started();
    await client.open("guide.md", GUIDE);
    await client.open("parts.csv", LIST);
    const cell = await client.ask<Location[]>("textDocument/definition", "guide.md", 7, 12);
    expect(cell).toEqual([
      {
        uri: `${FOLDER}parts.csv`,
        range: { start: { line: 1, character: 0 }, end: { line: 1, character: 2 } },
      },
    ]);
    const step = await client.ask<Location[]>("textDocument/definition", "parts.csv", 1, 1);
    expect(step).toEqual([
      {
        uri: `${FOLDER}guide.md`,
        range: { start: { line: 7, character: 11 }, end: { line: 7, character: 13 } },
      },
    ]);
  });

  test("offers the fixes of the findings in a range", async () => {
    await started();
    await client.open("guide.md", GUIDE.replace("[R1]", "[R2]"));
    await client.settled();
    const range = { start: { line: 7, character: 11 }, end: { line: 7, character: 13 } };
    const actions = await client.connection.sendRequest<CodeAction[]>("textDocument/codeAction", {
      textDocument: { uri: `${FOLDER}guide.md` },
      range,
      context: { diagnostics: [] },
    });
    const [fix] = actions;
    expect(fix?.edit?.documentChanges).toEqual([
      {
        textDocument: { uri: `${FOLDER}guide.md`, version: 1 },
        edits: [{ range, newText: "R1" }],
      },
    ]);
  });

  test("applies settings", async () => {
    client = new TestClient({ "parts.csv": LIST });
    await client.start({ checks: { "missing-part": "off" } });
    await client.open("guide.md", FORGETFUL);
    expect(await client.findings("guide.md")).toEqual([]);
    await client.notify("workspace/didChangeConfiguration", { settings: { kitquill: {} } });
    expect(await client.findings("guide.md")).toEqual(["2:0 missing-part"]);
  });

  test("applies those of the folder that a guide is in, where a window has several", async () => {
    client = new TestClient({ "parts.csv": LIST, "quiet/parts.csv": LIST });
    const quiet = `${FOLDER}quiet`;
    client.connection.onRequest("client/registerCapability", () => null);
    client.connection.onRequest("workspace/configuration", ({ items }: ConfigurationParams) =>
      items.map(({ scopeUri }) =>
        scopeUri === quiet ? { checks: { "missing-part": "off" } } : { checks: {} },
      ),
    );
    await client.start({}, { workspace: { configuration: true } });
    await client.open("guide.md", FORGETFUL);
    await client.open("quiet/guide.md", FORGETFUL);
    expect(await client.findings("quiet/guide.md")).toEqual(["2:0 missing-part"]);
    await client.notify("workspace/didChangeWorkspaceFolders", {
      event: { added: [{ uri: quiet, name: "quiet" }], removed: [] },
    });
    expect(await client.findings("quiet/guide.md")).toEqual([]);
    expect(await client.findings("guide.md")).toEqual(["2:0 missing-part"]);
    await client.notify("workspace/didChangeWorkspaceFolders", {
      event: { added: [], removed: [{ uri: quiet, name: "quiet" }] },
    });
    expect(await client.findings("quiet/guide.md")).toEqual(["2:0 missing-part"]);
  });
});
