/**
 * The first hour of a new author, with the parts list of the README: a guide is started, worded, put
 * out of order and back, given a figure and a caution, published, read on a phone, and printed.
 */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { chromium } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { findBrowser } from "../../scripts/browser.mjs";
import { fencedBlocks } from "../docs/page.ts";
import { type Editor, start } from "./driver.ts";

const SCREENSHOTS = join(import.meta.dirname, "../screenshots");
const README = readFileSync(join(import.meta.dirname, "../../README.md"), "utf8");
const LIST = fencedBlocks(README).find(({ name }) => name === "wren-parts.csv")!.text;
const PHONE = { width: 390, height: 844 };
const folder = mkdtempSync(join(tmpdir(), "first-hour-"));

let editor: Editor;
beforeAll(async () => {
  writeFileSync(join(folder, "wren-parts.csv"), LIST);
  editor = await start({ folder });
  editor.waitAtMost(60_000);
}, 120_000);
afterAll(async () => {
  await editor?.close();
  rmSync(folder, { recursive: true });
});

/** The number of the line that begins so. */
async function lineOf(beginning: string): Promise<number> {
  const lines = (await editor.text()).split("\n");
  const index = lines.findIndex((line) => line.startsWith(beginning));
  expect(index, beginning).toBeGreaterThanOrEqual(0);
  return index + 1;
}

/** Writes a line anew. */
async function reword(beginning: string, text: string): Promise<void> {
  await editor.goTo(await lineOf(beginning), 1);
  await editor.press("Shift+End");
  await editor.typeText(text);
  await editor.press("Escape");
}

async function codes(): Promise<string[]> {
  return (await editor.problems()).map(({ code }) => code);
}

test("a guide is started from the parts list", { timeout: 120_000 }, async () => {
  await editor.openFile("wren-parts.csv");
  await editor.command("Kitquill: Start a Guide from This Parts List");
  await editor.page.getByText("Name of the kit").waitFor();
  await editor.answer("Wren, a signal tracer");
  await editor.eventually(
    () => editor.activeFile(),
    (file) => file === "wren.md",
  );
  await editor.eventually(
    () => editor.progress(),
    (shown) => shown.includes("12 of 12 fitted"),
  );
  await editor.screenshot("hour-1-started");
});

test("the steps are worded until nothing is found", { timeout: 240_000 }, async () => {
  await reword("1. Solder the resistors", "1. Lay the resistors flat. [R1–R4, R7 = 4k7]");
  await reword("2. Solder the socket", "2. Turn the notch of the socket to the corner. [XU3]");
  await reword("3. Solder the capacitors", "3. Solder both capacitors. [C1, C2 = 100n]");
  await reword("4. Solder the LED", "4. Put the long lead of the LED into the hole +. [LED1]");
  await reword("5. Solder the electro", "5. Turn the stripe to the edge. [C3 = 100 µF]");
  await reword("1. Push the chip", "1. Push the chip in, notch to notch. [insert: U3]");
  await editor.eventually(codes, (found) => found.length === 0);
  await editor.screenshot("hour-2-worded");
});

test("a step out of order is found and put back", { timeout: 240_000 }, async () => {
  await editor.goTo(await lineOf("6. Solder the relay"), 1);
  for (let i = 0; i < 3; i++) await editor.press("Alt+ArrowUp");
  await editor.eventually(codes, (found) => found.includes("height-order"));
  await editor.screenshot("hour-3-out-of-order");
  const at = (await editor.problems()).find(({ code }) => code === "height-order")!;
  await editor.quickFix(at.line, at.column, "Move this step to its place in the stage");
  await editor.eventually(codes, (found) => found.length === 0);
  await editor.screenshot("hour-4-back");
});

test("a figure and a caution are added", { timeout: 240_000 }, async () => {
  const board = await lineOf("1. Use [4");
  await editor.goTo(board, 1);
  await editor.press("End");
  await editor.typeText(" Tighten to {torque(M3) = 5 N·m}.");
  await editor.press("Escape");
  await editor.eventually(codes, (found) => found.includes("torque-limit"));
  await editor.screenshot("hour-5-figure");
  await editor.deleteAt(board, "1. Use [4 × M3x6]. Tighten to {torque(M3) = ".length + 1, 5);
  await editor.typeText("0.5 N·m");
  await editor.press("Escape");
  await editor.eventually(codes, (found) => found.length === 0);
  await editor.goTo((await lineOf("## The board")) + 1, 1);
  await editor.press("Enter");
  await editor.typeText("> **");
  await editor.suggest("CAUTION: sharp edge …");
  await editor.eventually(
    () => editor.text(),
    (text) => /## The board\n\n> \*\*CAUTION: sharp edge\.\*\* /.test(text),
  );
  await editor.screenshot("hour-6-caution");
});

test("it is published, read on a phone and printed", { timeout: 240_000 }, async () => {
  await editor.command("Kitquill: Publish Guide…");
  await editor.offered("What to publish");
  await editor.screenshot("hour-7-publish");
  await editor.press("Enter");
  await editor.offered("Where to write it");
  await editor.press("Enter");
  await editor.eventually(
    () => editor.notifications(),
    (told) => told.some((text) => text.includes("files were written to wren-published")),
  );
  await editor.screenshot("hour-8-published");
  await editor.showExplorer();
  await editor.openFile("wren-published/guide.html");
  const page = join(folder, "guide.html");
  writeFileSync(page, await editor.text());
  const browser = await chromium.launch({
    executablePath: findBrowser()!,
    args: ["--no-sandbox", "--disable-gpu"],
  });
  try {
    const phone = await browser.newPage({ viewport: PHONE, deviceScaleFactor: 2 });
    await phone.goto(pathToFileURL(page).href);
    expect(await phone.evaluate("document.documentElement.scrollWidth")).toBe(PHONE.width);
    await phone.screenshot({ path: join(SCREENSHOTS, "hour-9-phone.png"), fullPage: true });
    await phone.pdf({ path: join(SCREENSHOTS, "hour-10-print.pdf"), format: "A4" });
    const printed = readFileSync(join(SCREENSHOTS, "hour-10-print.pdf"), "latin1");
    expect(printed.match(/\/Type\s*\/Page\b/g)?.length).toBeGreaterThan(1);
  } finally {
    await browser.close();
  }
});
