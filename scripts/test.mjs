// npm test: sets up what is missing, then lint, types, build, tests, and the tests in a real editor.
// Every step runs even when one before it failed, so that one run tells all. The last line sums up.
import { existsSync, mkdirSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { findBrowser } from "./browser.mjs";
import { node, ROOT } from "./run.mjs";
import { setUp, setUpProject } from "./setup.mjs";

const RESULTS = join(ROOT, "dist/test-results");
const EDITOR = join(ROOT, "test/editor");
const sum = { passed: 0, failed: 0, skipped: 0 };

/** A step that passes or fails as a whole; only its failure is counted. */
async function gate(title, work) {
  const started = Date.now();
  console.log(`\n== ${title}`);
  const code = await work();
  const seconds = ((Date.now() - started) / 1000).toFixed(1);
  console.log(code === 0 ? `${title}: done in ${seconds} s` : `${title}: FAILED`);
  if (code !== 0) sum.failed++;
}

/** Runs vitest with a configuration and adds its counts to the sum. */
async function vitest(title, config) {
  console.log(`\n== ${title}`);
  const results = join(RESULTS, `${title.replaceAll(" ", "-")}.json`);
  const reporters = ["--reporter=default", "--reporter=json", `--outputFile.json=${results}`];
  const code = await node("node_modules/vitest/vitest.mjs", [
    "run",
    `--config=${config}`,
    ...reporters,
  ]);
  if (!existsSync(results)) {
    console.log(`${title}: FAILED before any test ran`);
    sum.failed++;
    return;
  }
  const counts = JSON.parse(readFileSync(results, "utf8"));
  sum.passed += counts.numPassedTests;
  sum.skipped += counts.numPendingTests + counts.numTodoTests;
  // A file that cannot be loaded, or an error outside any test, fails no test of its own.
  sum.failed += counts.numFailedTests || (code === 0 ? 0 : 1);
}

async function editorTests() {
  const required = process.env.CI === "true" || process.env.KITQUILL_EDITOR_TESTS === "required";
  const browser = findBrowser();
  if (browser) {
    await setUp(EDITOR);
    process.env.KITQUILL_BROWSER = browser;
    await vitest("editor tests", "test/editor/vitest.config.ts");
  } else if (required) {
    console.log("\nThe tests in a real editor must run here, and no Chromium was found: FAILED");
    sum.failed++;
  } else {
    console.log("\nSkipped: the tests in a real editor need Chromium or Chrome; none was found.");
    sum.skipped++;
  }
}

try {
  await setUpProject();
  rmSync(RESULTS, { recursive: true, force: true });
  mkdirSync(RESULTS, { recursive: true });
  await gate("lint", () => node("node_modules/@biomejs/biome/bin/biome", ["check", "."]));
  await gate("types", () => node("node_modules/typescript/bin/tsc", ["--noEmit"]));
  await gate("types of the page", () =>
    node("node_modules/typescript/bin/tsc", ["--noEmit", "-p", "server/page"]),
  );
  await gate("sizes", () => node("scripts/build.mjs", ["--minify"]));
  await gate("build", () => node("scripts/build.mjs"));
  await vitest("tests", "vitest.config.ts");
  await editorTests();
} catch (error) {
  console.error(error);
  sum.failed++;
}
const skipped = sum.skipped > 0 ? `, ${sum.skipped} skipped` : "";
console.log(`\n${sum.passed} passed, ${sum.failed} failed${skipped}`);
process.exitCode = sum.failed === 0 ? 0 : 1;
