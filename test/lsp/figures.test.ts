/** Figures through the language server: hints and hover over the protocol. */
import { afterEach, beforeEach, expect, test } from "vitest";
import type { Hover, InlayHint } from "vscode-languageserver";
import { FOLDER, TestClient } from "./client.ts";

const GUIDE =
  "---\nparts: parts.csv\nsupply: { VCC: 12 V ± 5 % }\n---\n\n1. Fit [R1]. {VCC^2 / R1}\n";

let client: TestClient;

beforeEach(async () => {
  client = new TestClient({ "guide.md": GUIDE, "parts.csv": "Designator,Value\nR1,10k\n" });
  await client.start();
  await client.open("guide.md", GUIDE);
});

afterEach(() => client.stop());

const hints = () =>
  client.connection.sendRequest<InlayHint[]>("textDocument/inlayHint", {
    textDocument: { uri: `${FOLDER}guide.md` },
    range: { start: { line: 0, character: 0 }, end: { line: 9, character: 0 } },
  });

test("A formula without a stated value has a hint with its result", async () => {
  const [hint, ...others] = await hints();
  expect(others).toEqual([]);
  expect(hint).toMatchObject({
    position: { line: 5, character: 24 },
    label: " = 14.4\u00a0mW",
    tooltip: "Worst case 12.996\u00a0mW … 15.876\u00a0mW",
  });
});

test("Parts have hints with value and height when the author wants them, at once", async () => {
  const list = "Designator,Value,Height\nR1–R3,10k,2.5\nC1,100n,\n";
  const text = "---\nparts: parts.csv\n---\n\n1. Fit [R1, R2–R3] [C1 = 100n] and [all R].\n";
  const own = new TestClient({ "parts.csv": list });
  let refreshes = 0;
  own.connection.onRequest("workspace/inlayHint/refresh", () => {
    refreshes++;
    return null;
  });
  await own.start({}, { workspace: { inlayHint: { refreshSupport: true } } });
  await own.open("guide.md", text);
  await own.settled();
  const shown = async () => {
    const found = await own.connection.sendRequest<InlayHint[]>("textDocument/inlayHint", {
      textDocument: { uri: `${FOLDER}guide.md` },
      range: { start: { line: 0, character: 0 }, end: { line: 9, character: 0 } },
    });
    return found.map(({ position, label }) => `${position.character}${label}`);
  };
  expect(await shown()).toEqual([]);
  await own.notify("workspace/didChangeConfiguration", {
    settings: { kitquill: { partHints: true } },
  });
  await own.settled();
  expect(refreshes).toBe(1);
  expect(await shown()).toEqual(["10 10k · 2.5 mm", "17 10k · 2.5 mm", "41 10k · 2.5 mm"]);
  own.stop();
});

test("Hover tells of a figure", async () => {
  const hover = await client.ask<Hover>("textDocument/hover", "guide.md", 5, 13);
  expect(JSON.stringify(hover.contents)).toContain(
    "`(12 V)^2 / 10 kΩ`".replaceAll(" V", "\u00a0V").replaceAll(" kΩ", "\u00a0kΩ"),
  );
});

/** Open pages of a guide of two pages, whose hints have been asked for; counts the refreshes. */
async function openPages(refreshSupport = true) {
  const [head, page] = [
    "---\nparts: parts.csv\npages: [more.md]\nsupply: { VCC: 12 V ± 5 % }\n---\n\n1. Fit [R1].\n",
    "## More\n\n1. Listen: {2 * VCC}.\n",
  ];
  const files = { "guide.md": head, "more.md": page, "parts.csv": "Designator,Value\nR1,10k\n" };
  const own = new TestClient(files);
  let refreshes = 0;
  own.connection.onRequest("workspace/inlayHint/refresh", () => {
    refreshes++;
    return null;
  });
  await own.start({}, { workspace: { inlayHint: { refreshSupport } } });
  await own.open("guide.md", head);
  await own.open("more.md", page);
  const hintsOfMore = () =>
    own.connection.sendRequest<InlayHint[]>("textDocument/inlayHint", {
      textDocument: { uri: `${FOLDER}more.md` },
      range: { start: { line: 0, character: 0 }, end: { line: 9, character: 0 } },
    });
  await own.settled();
  const [hint] = await hintsOfMore();
  expect(hint!.label).toBe(" = 24\u00a0V");
  return { own, hintsOfMore, refreshes: () => refreshes };
}

test("A client is told when the results of another open page change", async () => {
  const { own, hintsOfMore, refreshes } = await openPages();
  await own.change("guide.md", 3, 15, 17, "15");
  await own.settled();
  expect(refreshes()).toBe(1);
  expect((await hintsOfMore())[0]!.label).toBe(" = 30\u00a0V");
  own.stop();
});

test("A client is not told of what changes no result, of its own edits, and of closed pages", async () => {
  const { own, refreshes } = await openPages();
  await own.change("guide.md", 6, 3, 6, "Take");
  await own.change("guide.md", 6, 0, 0, "{1 V + 1 V}\n\n");
  await own.change("more.md", 2, 3, 9, "Look");
  await own.change("more.md", 2, 9, 10, "3");
  await own.settled();
  expect(refreshes()).toBe(0);
  await own.close("more.md");
  await own.change("guide.md", 3, 15, 17, "15");
  await own.settled();
  expect(refreshes()).toBe(0);
  own.stop();
});

test("A client that cannot refresh is not asked to", async () => {
  const { own, refreshes } = await openPages(false);
  await own.change("guide.md", 3, 15, 17, "15");
  await own.settled();
  expect(refreshes()).toBe(0);
  own.stop();
});

test("A client is told when the parts list changes a result", async () => {
  const { own, refreshes } = await openPages();
  await own.change("more.md", 2, 20, 20, " {2 * R1}");
  await own.settled();
  await own.connection.sendRequest("textDocument/inlayHint", {
    textDocument: { uri: `${FOLDER}more.md` },
    range: { start: { line: 0, character: 0 }, end: { line: 9, character: 0 } },
  });
  await own.changeFile("parts.csv", "Designator,Value\nR1,22k\n");
  await own.settled();
  expect(refreshes()).toBe(1);
  own.stop();
});
