/** The examples on the pages of the checks do what the pages say. */
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { CHECKS } from "../../server/src/checks/all.ts";
import { applyFix, checkFiles, checkFixture, show } from "../fixture.ts";
import { examplesOf } from "./pages.ts";

const FOLDER = "server/docs/checks";
const SECTIONS = ["What", "Why", "Wrong", "Right", "Source"];
/** Ask of a guide what an example, being a piece of one, leaves out; they count on their own pages. */
const OF_WHOLE_GUIDES = new Set(["hazard-missing", "power-up-missing", "reading-remedy"]);
/** Written by `npm run docs`. */
const INDEX = "README.md";

const codes = readdirSync(FOLDER)
  .filter((name) => name.endsWith(".md") && name !== INDEX)
  .map((name) => name.slice(0, -".md".length));

test("Every check has a page and every page a check", () => {
  expect(codes.sort()).toEqual(CHECKS.map((check) => check.meta.code).sort());
});

describe.each(codes)("The page of %s", (code) => {
  const page = readFileSync(`${FOLDER}/${code}.md`, "utf8");
  const examples = examplesOf(page);
  const wrong = examples.filter((example) => example.kind === "wrong");
  const right = examples.filter((example) => example.kind === "right");

  test("has its title, its summary, its sections and examples of both kinds", () => {
    const check = CHECKS.find((one) => one.meta.code === code);
    expect(page.split("\n")[0]).toBe(`# ${code}`);
    expect(page.split("\n")[2]).toBe(check?.meta.summary);
    for (const section of SECTIONS) expect(page).toContain(`\n## ${section}\n`);
    expect(wrong.length).toBeGreaterThan(0);
    expect(right.length).toBeGreaterThan(0);
  });

  test.each(wrong)("draws each finding of the wrong example at line $line", async (example) => {
    const all = await checkFixture(example.fixture);
    const own = all.found.filter((one) => one.code === code);
    expect(show(own)).toEqual(show(all.expected.filter((one) => one.code === code)));
    expect(own.length).toBeGreaterThan(0);
    for (const expected of all.expected) {
      const [place] = show([expected]);
      const there = all.found.filter((one) => show([one])[0] === place);
      expect(there.map((one) => one.message).join("\n"), place).toContain(expected.says);
      expect(there.length, place).toBeGreaterThan(0);
    }
  });

  test.each(right)("has no finding in the right example at line $line", async (example) => {
    const { found, expected } = await checkFixture(example.fixture);
    expect(found.filter((one) => one.code === code || !OF_WHOLE_GUIDES.has(one.code))).toEqual([]);
    expect(expected).toEqual([]);
  });

  test.each(wrong)("fixes what it offers to fix at line $line, once for all", async (example) => {
    const { files, diagnoses } = await checkFixture(example.fixture, code);
    for (const diagnosis of diagnoses) {
      for (const fix of diagnosis.fixes()) {
        const fixed = applyFix(files, fix);
        const { found } = await checkFiles(fixed);
        const before = diagnoses.filter((one) => one.message === diagnosis.message).length;
        const after = found.filter((one) => one.message === diagnosis.message).length;
        expect(after, `${fix.title}: ${diagnosis.message}`).toBe(before - 1);
        expect(found.filter((one) => one.code === code).length).toBeLessThan(diagnoses.length);
      }
    }
  });
});
