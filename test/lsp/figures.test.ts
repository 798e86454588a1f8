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
    tooltip: "Worst case 13\u00a0mW … 15.9\u00a0mW",
  });
});

test("Hover tells of a figure", async () => {
  const hover = await client.ask<Hover>("textDocument/hover", "guide.md", 5, 13);
  expect(JSON.stringify(hover.contents)).toContain(
    "`(12 V)^2 / 10 kΩ`".replaceAll(" V", "\u00a0V").replaceAll(" kΩ", "\u00a0kΩ"),
  );
});
