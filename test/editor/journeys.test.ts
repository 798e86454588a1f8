/** What an author does from the first word to the last, in one editor. */
import { join } from "node:path";
import { afterAll, afterEach, beforeAll, expect, test } from "vitest";
import { type Editor, start } from "./driver.ts";

const folder = join(import.meta.dirname, "chime");
let editor: Editor;

beforeAll(async () => {
  editor = await start({ folder });
});

afterEach(() => editor.closeAll());

afterAll(() => editor?.close());

async function untilProgress(shown: string): Promise<void> {
  await editor.eventually(
    () => editor.progress(),
    (progress) => progress.includes(shown),
  );
}

test("a step is written with completion, its stage reordered, the server restarted on the way", async () => {
  await editor.openFile("crake.md");
  await untilProgress("5 of 6 fitted");
  await editor.press("Control+End");
  await editor.typeText("4. Solder the LED [");
  expect((await editor.suggestions())[0]).toContain("LED1");
  await editor.screenshot("completion");
  await editor.press("Enter");
  await editor.typeText("].\n\n> **");
  await editor.suggest("CAUTION");
  const written = await editor.text();
  expect(written).toContain("4. Solder the LED [LED1].\n\n> **CAUTION");
  await untilProgress("6 of 6 fitted");

  await editor.command("Kitquill: Restart Server");
  await untilProgress("6 of 6 fitted");
  expect(await editor.text()).toBe(written);

  await editor.quickFix(13, 22, "Put stage 1 in height order");
  await editor.eventually(
    () => editor.text(),
    (text) => /\[D1\].*\[R1–R3\].*\[C1\].*\[LED1\]/s.test(text),
  );
  await editor.press("Control+z");
  expect(await editor.text()).toBe(written);
});

/** The list of changes that an author ticks before they are made. */
const preview = () => editor.page.locator(".bulk-edit-panel");

/** The changes that it shows, once it shows this one, each with whether it is ticked. */
async function proposed(text: string): Promise<[string, boolean][]> {
  const rows = () =>
    preview()
      .locator(".monaco-list-row")
      .evaluateAll((all) =>
        all.map((row): [string, boolean] => [
          row.getAttribute("aria-label") ?? "",
          row.querySelector("input")?.checked ?? false,
        ]),
      );
  return editor.eventually(rows, (shown) => shown.some(([label]) => label.includes(text)));
}

async function answerPreview(button: "Apply" | "Discard"): Promise<void> {
  await preview().getByText(button, { exact: true }).click();
  await preview().waitFor({ state: "hidden" });
}

const ADOPT = "Mark the Parts Named in This Guide";

test("a plain text becomes a guide, after a look at each mark", async () => {
  await editor.openFile("plain.md");
  const plain = await editor.text();
  await editor.chooseInMenu("plain.md", ADOPT);
  await editor.answer("crake-parts.csv");
  await proposed("[D1]");
  expect(await editor.notifications()).toEqual([expect.stringContaining("Left to you: LED1.")]);
  await editor.screenshot("adopt-preview");
  const named = `---\nparts: "crake-parts.csv"\n---\n\n${plain}`;
  expect(await editor.text()).toBe(named);
  await preview().locator(".monaco-list-row input").first().click();
  await answerPreview("Apply");
  await editor.eventually(
    () => editor.text(),
    (text) => text.includes("- [R1, R2, R3] 4k7\n- [D1], ring"),
  );
  const text = await editor.text();
  expect(text).toContain("Solder the electrolytic [C1], longer");
  expect(text).toContain("Measure R2. Is LED1 lit?");
  await untilProgress("5 of 6 fitted");
  await editor.press("Control+z");
  expect(await editor.text()).toBe(named);
});

test("the marks are offered by every menu, and one of them is taken back", async () => {
  await editor.openFile("plain.md");
  await editor.command(`Kitquill: ${ADOPT}`);
  await editor.answer("crake-parts.csv");
  await proposed("[D1]");
  await answerPreview("Discard");
  await editor.chooseInTitleMenu(ADOPT);
  await proposed("[D1]");
  await answerPreview("Discard");
  await editor.goTo(9, 5);
  await editor.chooseAtCursor(ADOPT);
  await proposed("[D1]");
  await answerPreview("Discard");
  const unmarked = await editor.text();
  await editor.quickFix(7, 5, "Mark the parts named in this stage");
  await proposed("[D1]");
  await preview().locator(".monaco-list-row input").first().click();
  await preview().locator(".monaco-list-row", { hasText: "[D1]" }).locator("input").click();
  expect((await proposed("[D1]")).map(([, isTicked]) => isTicked)).toEqual([
    true,
    true,
    false,
    true,
  ]);
  await answerPreview("Apply");
  await editor.eventually(
    () => editor.text(),
    (text) =>
      text === unmarked.replace("R1, R2, R3 4k7", "[R1, R2, R3] 4k7").replace(" C1,", " [C1],"),
  );
});

test("a name that another part has is refused, and the mark stays", async () => {
  await editor.openFile("crake.md");
  await untilProgress("5 of 6 fitted");
  const before = await editor.text();
  await editor.rename(11, 27, "D1");
  await editor.eventually(
    () => editor.notifications(),
    (told) => told.some((text) => text.includes("D1")),
  );
  await editor.screenshot("rename-refused");
  expect(await editor.text()).toBe(before);
});

test("a part gets another name in guide, list and a second guide, the list closed or open", async () => {
  await editor.openFile("crake.md");
  await untilProgress("5 of 6 fitted");
  await editor.rename(11, 27, "R9");
  await editor.eventually(
    () => editor.text(),
    (text) => text.includes("1. Solder the resistors [R9, R2, R3].\n"),
  );
  await editor.openFile("repair.md");
  await editor.openFile("crake-parts.csv");
  await editor.eventually(
    () => editor.text(),
    (text) => text.includes("\nR9 R2 R3,3,4k7,"),
  );
  await editor.rename(2, 4, "R11");
  await editor.eventually(
    () => editor.text(),
    (text) => text.includes("\nR9 R11 R3,3,4k7,"),
  );
  await editor.openFile("repair.md");
  expect(await editor.text()).toContain("measure R11, which");
  await editor.openFile("crake.md");
  expect(await editor.text()).toContain("[R9, R11, R3]");
  await untilProgress("5 of 6 fitted");
});
