/** What an author sees when the server cannot run; and that these tests can fail. */
import { join } from "node:path";
import { afterEach, expect, test } from "vitest";
import { type Editor, start } from "./driver.ts";

const folder = join(import.meta.dirname, "kit");
/** By then the editor has done what it puts off at its start. */
const STARTED_MS = 4_000;
let editor: Editor;

afterEach(() => editor?.close());

async function open(server: string): Promise<void> {
  editor = await start({ folder, server });
  await editor.openFile("wren.md");
}

test("a server that fails while it loads is told in one message that leads to the log", async () => {
  await open("throw new Error('broken on purpose');");
  const told = await editor.eventually(
    () => editor.notifications(),
    (messages) => messages.length > 0,
  );
  expect(told).toEqual([expect.stringContaining("its server did not start")]);
  await editor.screenshot("server-broken");
  // An editor that has just started closes a panel that is opened meanwhile.
  await new Promise((resolve) => setTimeout(resolve, STARTED_MS));
  await editor.pressButton("Show Log");
  expect(await editor.log()).toContain("broken on purpose");
});

test("no verb of these tests is content when the server is silent", async () => {
  await open("self.onmessage = () => {};");
  editor.waitAtMost(3_000);
  const problems = editor.eventually(
    () => editor.problems(),
    (shown) => shown.length > 0,
  );
  await expect(problems).rejects.toThrow("Not within 3 s. Last seen: []");
  const squiggles = editor.eventually(
    () => editor.squiggles(),
    ({ errors }) => errors > 0,
  );
  await expect(squiggles).rejects.toThrow('"errors": 0');
  await expect(editor.hover(11, 22)).rejects.toThrow("Not within 3 s");
  await expect(editor.goToDefinition(11, 22)).rejects.toThrow("Not within 3 s");
  await expect(editor.quickFix(14, 22, "Move this step")).rejects.toThrow();
});
