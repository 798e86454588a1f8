/** The preview over the protocol: patches as the text changes, and places in both directions. */
import { afterEach, expect, test } from "vitest";
import {
  FIND_IN_PREVIEW,
  type FindInPreviewResult,
  HIDE_PREVIEW,
  PATCH_PREVIEW,
  type SentBlock,
  type SentPatch,
  SHOW_PREVIEW,
  type ShowPreviewResult,
  SOURCE_OF_PREVIEW,
  type SourceOfPreviewResult,
} from "../../server/src/lsp/protocol.ts";
import { FOLDER, TestClient } from "./client.ts";

const LIST = "Designator,Value\nR1,1k\nR2,2k\n";
const GUIDE = `---
title: Wren
parts: list.csv
---

# Wren

## Board

1. Solder [R1].

   Flush to the board.

2. Solder [R2]. ![Both](both.png)

   1. First lead.
   2. Second lead.
`;
let client: TestClient;
let panel: SentBlock[];
let patches: SentPatch[];

afterEach(() => client.stop());

async function started(files: Record<string, string>): Promise<void> {
  client = new TestClient(files);
  panel = [];
  patches = [];
  client.connection.onNotification(PATCH_PREVIEW, (patch: SentPatch) => {
    patches.push(patch);
    if (patch.isNew) panel = [];
    for (const { at, remove, add } of patch.splices) panel.splice(at, remove, ...add);
  });
  await client.start();
}

const show = (name: string) =>
  client.connection.sendRequest<ShowPreviewResult>(SHOW_PREVIEW, { uri: FOLDER + name });
const find = (name: string, line: number) =>
  client.connection.sendRequest<FindInPreviewResult>(FIND_IN_PREVIEW, { uri: FOLDER + name, line });
const source = (block: number, share = 0, step?: string) =>
  client.connection.sendRequest<SourceOfPreviewResult>(SOURCE_OF_PREVIEW, { block, share, step });

/** The block whose HTML holds the text, when the panel has one. */
async function block(text: string): Promise<SentBlock> {
  for (let tries = 0; tries < 200; tries++) {
    const found = panel.find(({ html }) => html.includes(text));
    if (found) return found;
    await client.settled();
  }
  throw new Error(`No block has ${text}: ${panel.map(({ html }) => html).join("\n")}`);
}

test("the guide comes whole, and then what is typed", async () => {
  await started({ "list.csv": LIST, "both.png": "x" });
  await client.open("guide.md", GUIDE);
  expect(await show("guide.md")).toEqual({ uri: `${FOLDER}guide.md` });
  const before = await block("step-1-1");
  expect(patches[0]).toMatchObject({ isNew: true, title: "Wren", language: "en" });
  expect((await block("both.png")).html).toContain(`src="${FOLDER}both.png"`);
  expect((await block("<h1>")).html).toContain("Wren");
  expect(panel.find(({ html }) => html.includes("stagebar"))?.html).toContain("2 parts");
  const count = patches.length;
  await client.change("guide.md", 9, 10, 10, "the resistor ");
  const after = await block("the resistor");
  expect(after.id).not.toBe(before.id);
  expect(patches.slice(count).flatMap(({ splices }) => splices)).toEqual([
    { at: panel.indexOf(after), remove: 1, add: [after] },
  ]);
});

test("a picture that is missing is told, until it is there", async () => {
  await started({ "list.csv": LIST });
  await client.open("guide.md", GUIDE);
  await show("guide.md");
  await block("Picture missing: Both");
  await client.changeFile("both.png", "x");
  await block(`${FOLDER}both.png`);
});

test("a picture that changes is shown anew", async () => {
  await started({ "list.csv": LIST, "both.png": "x" });
  await client.open("guide.md", GUIDE);
  await show("guide.md");
  await block(`src="${FOLDER}both.png"`);
  await client.changeFile("both.png", "y");
  await block(`src="${FOLDER}both.png?edition=1"`);
  await client.changeFile("both.png", undefined);
  await block("Picture missing: Both");
  await client.changeFile("both.png", "z");
  await block(`src="${FOLDER}both.png?edition=3"`);
});

test("a line has its block, and a block its lines", async () => {
  await started({ "list.csv": LIST });
  await client.open("guide.md", GUIDE);
  await show("guide.md");
  const [first, second] = [await block("step-1-1"), await block("step-1-2")];
  const head = await block("<h1>");
  expect(await find("guide.md", 1)).toMatchObject({ block: head.id });
  expect(await find("guide.md", 9)).toEqual({ block: first.id, share: 0 });
  expect(await find("guide.md", 11)).toEqual({ block: first.id, share: 0.5 });
  expect(await find("guide.md", 13)).toEqual({ block: second.id, share: 0 });
  expect(await source(second.id)).toMatchObject({ range: { start: { line: 13 } } });
  expect(await source(first.id, 0.5)).toMatchObject({ range: { start: { line: 11 } } });
  expect(await source(second.id, 0, "1.2.2")).toMatchObject({
    range: { start: { line: 16, character: 3 } },
  });
  // Lines that come before move the source and not the block.
  await client.change("guide.md", 7, 0, 0, "Some words first.\n\n");
  expect(await source(second.id)).toMatchObject({ range: { start: { line: 15 } } });
  expect(await source(head.id)).toMatchObject({ range: { start: { line: 0 } } });
  expect(await source(999_999)).toBeNull();
});

test("a place asked for right behind an edit is one in the text as it is then", async () => {
  // The first edit of a long stage has it cut into its steps, and the preview takes a while.
  const steps = Array.from({ length: 400 }, (_, index) => `1. Solder the part *${index}*.`);
  const guide = ["---", "parts: list.csv", "---", "", "## Board", "", ...steps, ""].join("\n");
  await started({ "list.csv": LIST });
  await client.open("guide.md", guide);
  await show("guide.md");
  await block("<em>399</em>");
  await client.change("guide.md", 8, 3, 9, "Fit");
  const place = await find("guide.md", 8);
  expect(place?.block).toBe((await block("Fit the part <em>2</em>")).id);
});

test("another guide takes the place of the first, and a list leads to its guide", async () => {
  await started({ "list.csv": LIST, "other.csv": "Designator\nR5\n" });
  await client.open("guide.md", GUIDE);
  await client.open("other.md", GUIDE.replace("list.csv", "other.csv").replace("Wren", "Owl"));
  await show("guide.md");
  await block("Wren");
  expect(await show("other.csv")).toEqual({ uri: `${FOLDER}other.md` });
  await block("Owl");
  expect(patches.at(-1)).toMatchObject({ title: "Owl" });
  const count = patches.length;
  await client.change("guide.md", 9, 10, 10, "the resistor ");
  await client.settled();
  expect(patches.length).toBe(count);
});

test("a guide that no editor has open is shown, with all its pages", async () => {
  const head = GUIDE.replace("title: Wren", "title: Wren\npages: [case.md]");
  await started({ "list.csv": LIST, "guide.md": head, "case.md": "## Case\n\n1. Close it.\n" });
  expect(await show("case.md")).toEqual({ uri: `${FOLDER}guide.md` });
  const last = await block("Close it");
  expect(await source(last.id)).toMatchObject({ uri: `${FOLDER}case.md` });
  await client.changeFile("case.md", "## Case\n\n1. Screw it down.\n");
  await block("Screw it down");
});

test("nothing is sent for a file of no guide, nor once nobody looks", async () => {
  await started({ "list.csv": LIST, "notes.md": "# Notes\n" });
  await client.open("notes.md", "# Notes\n");
  expect(await show("notes.md")).toBeNull();
  await client.open("guide.md", GUIDE);
  await show("guide.md");
  await block("step-1-1");
  await client.connection.sendRequest(HIDE_PREVIEW, {});
  const count = patches.length;
  await client.change("guide.md", 9, 10, 10, "the resistor ");
  await client.settled();
  expect(patches.length).toBe(count);
});

test("what an author's HTML could run does not reach the panel", async () => {
  await started({ "list.csv": LIST });
  const evil =
    '<script>alert(1)</script><img src="both.png" onerror="alert(2)">\n\n[x](javascript:1)';
  await client.open("guide.md", `${GUIDE}\n${evil}\n`);
  await show("guide.md");
  await block("Second lead");
  const all = panel.map(({ html }) => html).join("\n");
  expect(all).not.toMatch(/<script|onerror|href="javascript:/i);
});
