/** The examples on the pages of the checks do what the pages say. */
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { CHECKS } from "../../server/src/checks/all.ts";
import { FixSet } from "../../server/src/checks/fixSet.ts";
import { applyFix, checkFiles, checkFixture, type Found, show } from "../fixture.ts";
import { examplesOf } from "./pages.ts";

const FOLDER = "server/docs/checks";
const SECTIONS = ["What", "Why", "Wrong", "Right", "Source"];
/** Ask of a guide what an example, being a piece of one, leaves out; they count on their own pages. */
const OF_WHOLE_GUIDES = new Set(["hazard-missing", "power-up-missing", "reading-remedy"]);
/** Safe fixes that make room for another one are few. */
const MOST_ROUNDS = 4;
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
    const { files, diagnoses, found } = await checkFixture(example.fixture);
    const own = diagnoses.filter((one) => one.code === code);
    for (const diagnosis of own) {
      for (const fix of diagnosis.fixes()) {
        const after = (await checkFiles(applyFix(files, fix))).found;
        const told = (list: readonly Found[]) =>
          list.filter((one) => one.message === diagnosis.message).length;
        expect(told(after), `${fix.title}: ${diagnosis.message}`).toBe(told(found) - 1);
        expect(after.filter((one) => one.code === code).length).toBeLessThan(own.length);
        expect(newlySerious(found, after), fix.title).toEqual([]);
      }
    }
  });

  test("speaks of a fix where one of its wrong examples is offered one, and only there", async () => {
    const offered = await Promise.all(
      wrong.map(async ({ fixture }) => (await checkFixture(fixture, code)).diagnoses),
    );
    const fixes = offered.flat().flatMap((one) => [...one.fixes()]);
    expect(fixes.length > 0).toBe(/^## Fix$|^The fix /m.test(page));
    if (fixes.some(({ safe }) => safe)) expect(page).toContain("`kitquill check --fix`");
  });

  test.each(wrong)(
    "makes all safe fixes at line $line together, until none is left",
    async (example) => {
      const { files: written, found } = await checkFixture(example.fixture);
      let files = written;
      for (let round = 0; round < MOST_ROUNDS; round++) {
        const { diagnoses } = await checkFiles(files);
        const set = new FixSet();
        for (const one of diagnoses) {
          const safe = one.fixes().find((fix) => fix.safe);
          if (safe) set.take(safe);
        }
        if (set.size === 0) break;
        expect(round, "rounds").toBeLessThan(MOST_ROUNDS - 1);
        const edits = [...set.edits].map(([uri, list]) => ({ uri, edits: list }));
        files = applyFix(files, { title: "all", safe: true, edits });
      }
      const after = (await checkFiles(files)).found;
      expect(newlySerious(found, after)).toEqual([]);
    },
  );
});

/** Errors and warnings of checks that found less before. */
function newlySerious(before: readonly Found[], after: readonly Found[]): string[] {
  const count = (list: readonly Found[], code: string) =>
    list.filter((one) => one.code === code).length;
  return after
    .filter(({ severity }) => severity === "error" || severity === "warning")
    .filter(({ code }) => count(after, code) > count(before, code))
    .map(({ code, message }) => `${code}: ${message}`);
}
