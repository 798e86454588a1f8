/** What an author does with a guide, in a real editor: see, change, ask, jump, fix, read back. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from "vitest";
import { type Editor, type Problem, start } from "./driver.ts";

const folder = join(import.meta.dirname, "kit");
const guide = readFileSync(join(folder, "wren.md"), "utf8");
let editor: Editor;

// One editor for all: each test finds the files as they are on the disk, and only the guide open.
beforeAll(async () => {
  editor = await start({ folder });
});

beforeEach(async () => {
  await editor.openFile("wren.md");
  await untilProblems(FAULTS);
});

afterEach(() => editor.closeAll());

afterAll(() => editor?.close());

/** The faults planted in the kit, in the order in which the view shows them. */
const FAULTS = [
  "wren.md:15:22 Error unknown-part",
  "wren.md:4:1 Error missing-part",
  "wren.md:14:22 Warning height-order",
  "wren-parts.csv:5:1 Error missing-part",
];

function brief({ file, line, column, severity, code }: Problem): string {
  return `${file}:${line}:${column} ${severity} ${code}`;
}

/** Waits until the Problems view has these entries and no others. */
async function untilProblems(expected: readonly string[]): Promise<void> {
  const wanted = JSON.stringify([...expected].sort());
  await editor.eventually(
    async () => (await editor.problems()).map(brief).sort(),
    (shown) => JSON.stringify(shown) === wanted,
  );
}

function without(code: string): string[] {
  return FAULTS.filter((fault) => !fault.endsWith(code));
}

test("opening a guide shows each fault at its place and in the Problems view", async () => {
  expect(await editor.squiggles()).toEqual({ errors: 2, warnings: 1, infos: 0, hints: 0 });
  const problems = await editor.problems();
  expect(problems.every(({ source }) => source === "kitquill")).toBe(true);
  const unknown = problems.find(({ code }) => code === "unknown-part");
  expect(unknown?.message).toContain("R7");
  await editor.screenshot("guide-open");
  await editor.openFile("wren-parts.csv");
  await editor.eventually(
    () => editor.squiggles(),
    ({ errors }) => errors === 1,
  );
});

test("typing repairs a fault, and the squiggle goes while the text is unsaved", async () => {
  await editor.deleteAt(15, 22, "R7".length);
  await editor.typeText("D1");
  await untilProblems(["wren.md:14:22 Warning height-order"]);
  await editor.screenshot("guide-repaired");
});

test("closing a list without saving brings back what the file says", async () => {
  await editor.openFile("wren-parts.csv");
  await editor.deleteAt(5, 1, "D1".length);
  await untilProblems([...without("missing-part"), "wren-parts.csv:5:2 Warning wrong-count"]);
  await editor.command("File: Revert File");
  await editor.closeFile();
  await untilProblems(FAULTS);
});

test("the code of a finding leads to the page of its check", async () => {
  await editor.followCode("height-order");
  const page = await editor.eventually(
    () => editor.markdownPreview(),
    (text) => text.includes("height-order"),
  );
  expect(page).toContain("A part is fitted after a taller one on the same board.");
  await editor.screenshot("check-page");
});

test("pointing at a part shows its line, its height and the step that fits it", async () => {
  const hover = await editor.hover(11, 22);
  expect(hover).toContain("R1 4k7");
  expect(hover).toContain("R_Axial_DIN0207_L6.3mm_D2.5mm");
  expect(hover).toContain("2.5 mm");
  expect(hover).toContain("step 1.1");
  await editor.screenshot("hover");
});

test("a part leads to its cell in the list, and the cell to the step", async () => {
  expect(await editor.goToDefinition(14, 22)).toEqual({
    file: "wren-parts.csv",
    line: 3,
    column: 1,
  });
  await editor.screenshot("definition-in-list");
  expect(await editor.goToDefinition(4, 2)).toMatchObject({ file: "wren.md", line: 12 });
});

test("the fix for the height order moves the step and leaves every other byte", async () => {
  await editor.quickFix(14, 22, "Move this step to its place in the stage");
  const second = "2. Fit the capacitors [C1, C2].\n   The stripe marks the minus lead.\n";
  const third = "3. Fit the resistor [R2].\n";
  expect(guide).toContain(second + third);
  const text = await editor.text();
  const unnumbered = (markdown: string) => markdown.replace(/^\d+\./gm, "#.");
  expect(unnumbered(text)).toBe(unnumbered(guide.replace(second + third, third + second)));
  await untilProblems(without("height-order"));
  await editor.screenshot("reordered");
  await editor.press("Control+z");
  expect(await editor.text()).toBe(guide);
});

test("the server can be restarted by command", async () => {
  await editor.command("Kitquill: Restart Server");
  await untilProblems(FAULTS);
  await editor.command("Kitquill: Show Log");
  expect(await editor.log()).toContain("Restarting the server.");
});

test("a change of the parts list is seen in the guide before and after it is saved", async () => {
  await editor.openFile("wren-parts.csv");
  await editor.deleteAt(5, 1, "D1".length);
  await editor.typeText("R7");
  const repaired = ["wren.md:14:22 Warning height-order"];
  await untilProblems(repaired);
  await editor.screenshot("list-changed");
  await editor.save();
  await editor.closeFile();
  await untilProblems(repaired);
  // The test host forgets what was saved with its window.
  await editor.reload();
});

test("a reload of the window checks the guide again", async () => {
  await editor.reload();
  await editor.openFile("wren.md");
  await untilProblems(FAULTS);
});
