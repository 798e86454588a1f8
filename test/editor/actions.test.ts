/** What the editor does for an author at a click or a key: moves, allows, mends on saving, keeps names true. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from "vitest";
import { type Editor, start } from "./driver.ts";

const folder = join(import.meta.dirname, "kit");
const guide = readFileSync(join(folder, "wren.md"), "utf8");
const settings = { "editor.codeActionsOnSave": { "source.fixAll.kitquill": "explicit" } };
let editor: Editor;

beforeAll(async () => {
  editor = await start({ folder, settings });
});

beforeEach(async () => {
  await editor.openFile("wren.md");
  await untilProgress("4 of 5 fitted");
});

afterEach(() => editor.closeAll());

afterAll(() => editor?.close());

async function untilProgress(shown: string): Promise<void> {
  await editor.eventually(
    () => editor.progress(),
    (progress) => progress.includes(shown),
  );
}

async function untilText(wanted: string): Promise<void> {
  await editor.eventually(
    () => editor.text(),
    (text) => text.includes(wanted),
  );
}

async function untilCursor(line: number, column: number): Promise<void> {
  await editor.eventually(
    () => editor.cursor(),
    (at) => at.line === line && at.column === column,
  );
}

test("a step is moved twice, the cursor in it, and each move is undone at once", async () => {
  await editor.quickFix(14, 22, "Move step 1.3 up");
  await untilCursor(12, 22);
  await editor.quickFix(12, 22, "Move step 1.2 up");
  await untilCursor(11, 22);
  expect(await editor.text()).toContain(
    "\n1. Fit the resistor [R2].\n2. Fit the resistor [R1].\n3. Fit the capacitors [C1, C2].\n   The",
  );
  await editor.press("Control+z");
  await editor.press("Control+z");
  expect(await editor.text()).toBe(guide);
});

test("a finding is allowed, and the reason is typed where the cursor then stands", async () => {
  await editor.quickFix(14, 22, "Allow height-order in step 1.3, with a reason");
  await untilCursor(14, "<!-- allow height-order: ".length + 1);
  await editor.typeText("C1 lies down");
  await untilText("\n<!-- allow height-order: C1 lies down -->\n3. Fit the resistor [R2].\n");
  await editor.eventually(
    () => editor.problems(),
    (problems) => problems.length > 0 && problems.every(({ code }) => !/height|allow/.test(code)),
  );
});

test("when every part is fitted, a click in the status bar shows what is found wrong", async () => {
  await editor.deleteAt(15, 22, "R7".length);
  await editor.typeText("D1");
  await untilProgress("5 of 5 fitted");
  await editor.command("View: Hide Panel");
  const panel = editor.page.locator(".markers-panel");
  await panel.waitFor({ state: "hidden" });
  await editor.clickProgress();
  await panel.waitFor();
});

test("what is safe to mend is mended on saving", async () => {
  await editor.goTo(11, 1);
  await editor.press("End");
  await editor.typeText(" It takes 5V.");
  await editor.save();
  await editor.eventually(
    () => editor.text(),
    (text) => /\[R1\]\. It takes 5\sV\.\n/.test(text),
  );
});

test("a parts list that is renamed in the explorer has its new name in the guide", async () => {
  await editor.renameFile("wren-parts.csv", "wren list.csv");
  await editor.pressInDialog("OK");
  await editor.openFile("wren.md");
  await untilText("\nparts: wren list.csv\n");
  await untilProgress("4 of 5 fitted");
});
