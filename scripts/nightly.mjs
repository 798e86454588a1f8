// npm run nightly: the packaged extension in an editor whose extensions run in Node. Too slow for each
// run of the tests, above all the first time.
import { findBrowser } from "./browser.mjs";
import { setUpNodeHost } from "./nodeHost.mjs";
import { node } from "./run.mjs";
import { setUpProject } from "./setup.mjs";

try {
  await setUpProject();
  const browser = findBrowser();
  if (!browser) throw new Error("The tests in a real editor need Chromium or Chrome.");
  await setUpNodeHost();
  process.exitCode = await node("scripts/package.mjs");
  if (process.exitCode === 0) {
    const env = { ...process.env, KITQUILL_BROWSER: browser };
    const args = ["run", "--config=test/node-host/vitest.config.ts"];
    process.exitCode = await node("node_modules/vitest/vitest.mjs", args, { env });
  }
} catch (error) {
  console.error(error.message);
  process.exitCode = 1;
}
