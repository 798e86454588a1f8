/** The views beside the text: what they show, and that a click in them does what it says. */
import { join } from "node:path";
import { afterAll, afterEach, beforeAll, expect, test } from "vitest";
import { type Editor, start } from "./driver.ts";

const folder = join(import.meta.dirname, "kit");
let editor: Editor;

// One editor for all: each test finds no file open and the explorer shown.
beforeAll(async () => {
  editor = await start({ folder });
});

afterEach(async () => {
  await editor.closeAll();
  await editor.showExplorer();
});

afterAll(() => editor?.close());

test("the views welcome a new author, and a guide is started from a parts list", async () => {
  expect(await editor.view("Stages and Steps")).toEqual([]);
  await editor.screenshot("views-welcome");
  await editor.showExplorer();
  await editor.openFile("wren-parts.csv");
  await editor.command("Kitquill: Start a Guide from This Parts List");
  await editor.answer("Wren again");
  await editor.eventually(
    () => editor.activeFile(),
    (file) => file === "wren-2.md",
  );
  const text = await editor.text();
  expect(text).toContain('title: "Wren again"');
  expect(text).toContain('parts: "wren-parts.csv"');
  expect(text).toMatch(/4\. Solder the LED \[D1\] \(red\)\.\n$/);
  await editor.eventually(
    () => editor.progress(),
    (shown) => shown.includes("5 of 5 fitted"),
  );
  await editor.screenshot("guide-started");
});

test("stages, parts left and progress follow the typing, and a click marks a part", async () => {
  await editor.openFile("wren.md");
  await editor.eventually(
    () => editor.progress(),
    (shown) => shown.includes("4 of 5 fitted"),
  );
  expect(
    await editor.eventually(
      () => editor.view("Stages and Steps"),
      (rows) => rows.length > 0,
    ),
  ).toEqual(["1 Board 4 parts"]);
  // What is seen is read out, the finding too.
  const board = editor.page.locator('[role="treeitem"][aria-label="1  Board, error"]');
  expect(await board.count()).toBe(1);
  const left = await editor.view("Parts Not Yet Fitted");
  expect(left.some((row) => row.startsWith("D1"))).toBe(true);
  await editor.screenshot("views");
  await editor.goTo(15, 25);
  await editor.clickInView("Parts Not Yet Fitted", "D1");
  await editor.eventually(
    () => editor.progress(),
    (shown) => shown.includes("5 of 5 fitted"),
  );
  expect(await editor.view("Parts Not Yet Fitted")).toEqual([]);
  expect(await editor.text()).toContain("\n4. Fit the resistor [R7] [D1].");
});

test("a part that is dragged into the text is marked where it is dropped", async () => {
  await editor.openFile("wren.md");
  const left = await editor.eventually(
    () => editor.view("Parts Not Yet Fitted"),
    (rows) => rows.length > 0,
  );
  expect(left.some((row) => row.startsWith("D1"))).toBe(true);
  await editor.dragFromView("Parts Not Yet Fitted", "D1", 15, 25);
  await editor.eventually(
    () => editor.text(),
    (text) => text.includes("\n4. Fit the resistor [R7][D1]."),
  );
  await editor.eventually(
    () => editor.progress(),
    (shown) => shown.includes("5 of 5 fitted"),
  );
  await editor.screenshot("dragged");
});
