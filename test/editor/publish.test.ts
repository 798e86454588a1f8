/** Publishing from the editor: what the author is asked, and the files that come of it. */
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type Editor, start } from "./driver.ts";

let editor: Editor;

/** One editor for all: each test goes on from what the one before has published. */
beforeAll(async () => {
  editor = await start({ folder: join(import.meta.dirname, "kit") });
  editor.waitAtMost(60_000);
  await editor.openFile("wren.md");
  await editor.eventually(
    () => editor.problems(),
    (problems) => problems.length >= 4,
  );
}, 120_000);
afterAll(() => editor?.close());

/** Publishes all outputs beside the guide, up to the writing. */
async function publish(): Promise<void> {
  await editor.command("Kitquill: Publish Guide…");
  expect(await editor.dialog()).toMatch(/found \d+ errors/);
  await editor.answerDialog("Publish Anyway");
  const outputs = await editor.offered("What to publish");
  expect(outputs.some((text) => text.startsWith("guide"))).toBe(true);
  expect(outputs.some((text) => text.startsWith("narration"))).toBe(true);
  await editor.screenshot("publish-outputs");
  await editor.press("Enter");
  expect(await editor.offered("Where to write it")).toEqual(["wren-published", "Another folder…"]);
  await editor.press("Enter");
}

/** Waits for a message and clears it away, so that the next can be told from it. */
async function untilTold(words: string): Promise<void> {
  await editor.eventually(
    () => editor.notifications(),
    (told) => told.some((text) => text.includes(words)),
  );
  await editor.screenshot("publish-done");
  await editor.command("Notifications: Clear All Notifications");
}

test("errors stop it unless the author insists, and the files can be read back", async () => {
  await editor.command("Kitquill: Publish Guide…");
  await editor.dialog();
  await editor.screenshot("publish-errors");
  await editor.answerDialog("Cancel");
  await publish();
  await untilTold("files were written to wren-published");
  await editor.openFile("wren-published/narration.vtt");
  const captions = await editor.text();
  expect(captions).toMatch(/^WEBVTT Wren/);
  expect(captions).toContain("Fit the capacitors C1, C2.");
  await editor.openFile("guide.html");
  expect(await editor.text()).toContain('class="forced"');
}, 300_000);

test("a second edition replaces the files of the first", async () => {
  await editor.openFile("wren.md");
  await editor.goTo(15, 1);
  await editor.deleteAt(15, 1, "4. Fit the resistor [R7].".length);
  await publish();
  await untilTold("files were written");
  await editor.openFile("narration.vtt");
  const captions = await editor.text();
  expect(captions).toMatch(/^WEBVTT Wren/);
  expect(captions).not.toContain("R7");
}, 300_000);

test("a file that was changed at its beginning is kept unless the author says otherwise", async () => {
  await editor.openFile("narration.txt");
  await editor.goTo(2);
  await editor.press("Shift+End");
  await editor.typeText("My own words.");
  await editor.save();
  await editor.openFile("wren.md");
  await publish();
  expect(await editor.dialog()).toContain("narration.txt");
  await editor.answerDialog("Cancel");
  await editor.openFile("narration.txt");
  expect(await editor.text()).toContain("My own words.");
}, 300_000);
