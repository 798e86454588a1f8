/** A revised parts list in a real editor: what it touches, what is seen to, what is renumbered. */
import { join } from "node:path";
import { afterAll, afterEach, beforeAll, expect, test } from "vitest";
import { type Editor, start } from "./driver.ts";

/** Many things are done one after the other, on machines of any speed. */
const PATIENCE = { timeout: 240_000 };
const VIEW = "Touched by the New List";
let editor: Editor;

// One editor for all: each test finds no file open and begins a comparison of its own.
beforeAll(async () => {
  editor = await start({ folder: join(import.meta.dirname, "revised") });
  editor.waitAtMost(30_000);
});

afterEach(async () => {
  await editor.command("Kitquill: End Comparison of Parts Lists");
  await editor.closeAll();
  await editor.showExplorer();
});

afterAll(() => editor?.close());

async function compared(old = "finch-parts-old.csv"): Promise<string[]> {
  await editor.openFile("finch.md");
  await editor.eventually(
    () => editor.progress(),
    (shown) => shown.includes("fitted"),
  );
  await editor.chooseInMenu("finch-parts.csv", "Compare with Another Parts List");
  await editor.answer(old);
  await editor.viewShows(VIEW);
  return editor.eventually(
    () => editor.view(VIEW),
    (rows) => rows.length > 0,
  );
}

/** What the view shows of the new list, whatever kind of file the old one is in. */
const TOUCHED = [
  "Steps to reword 3",
  expect.stringMatching(/^1\.1 R1 and R2: value 4k7 → 5k6; bands /),
  expect.stringMatching(/^1\.3 R5 seems to be R9 now/),
  expect.stringMatching(/^1\.4 R5 seems to be R9 now/),
  "Sets and matches 1",
  '1.2 "all 100n" takes in C2 now: 2 parts, before 1.',
];

test("what the new list touches stays until it is dealt with or dismissed", PATIENCE, async () => {
  const rows = await compared();
  await editor.screenshot("revision");
  expect(rows).toEqual(TOUCHED);
  // A click leads to the place.
  await editor.clickInView(VIEW, "takes in C2");
  await editor.eventually(
    () => editor.cursor(),
    (at) => at.file === "finch.md" && at.line === 12,
  );
  await editor.actInView(VIEW, "takes in C2", "Dismiss");
  await editor.eventually(
    () => editor.view(VIEW),
    (shown) => !shown.some((row) => row.includes("C2")),
  );
  await editor.actInView(VIEW, "R1 and R2", "Apply Fix");
  await editor.eventually(
    () => editor.view(VIEW),
    (shown) => !shown.some((row) => row.includes("R1 and R2")),
  );
  expect(await editor.text()).toContain("[R1, R2 = 5k6]");
  // The comparison is still there when the window comes back, and so is what was dismissed.
  await editor.reload();
  await editor.viewShows(VIEW);
  const left = await editor.eventually(
    () => editor.view(VIEW),
    (shown) => shown.length > 0,
  );
  expect(left).toContainEqual(expect.stringMatching(/^1\.3 R5 seems/));
  expect(left).not.toContainEqual(expect.stringContaining("C2"));
});

test(
  "renumbered designators are carried through in one edit that one undo takes back",
  PATIENCE,
  async () => {
    await compared();
    await editor.actOnView(VIEW, "Carry Renumbered Designators");
    await editor.confirmPicks("R5 → R9");
    await editor.pressInDialog("Change");
    await editor.eventually(
      () => editor.text(),
      (text) => text.includes("[R9]") && text.includes("Look at R9 again"),
    );
    await editor.eventually(
      () => editor.view(VIEW),
      (shown) => !shown.some((row) => row.includes("R5")),
    );
    // Reading the text puts the focus into it.
    await editor.text();
    await editor.press("Control+z");
    await editor.eventually(
      () => editor.text(),
      (text) => text.includes("[R5]") && text.includes("Look at R5 again"),
    );
  },
);

// The workbook was written by LibreOffice from the list in CSV beside it.
test("an old list in a workbook touches the same", PATIENCE, async () => {
  expect(await compared("finch-parts-old.xlsx")).toEqual(TOUCHED);
});
