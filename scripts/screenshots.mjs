// npm run screenshots: makes the pictures of the README in media/pictures/ from the real extension in a
// real editor, and from a page that it has published. The fonts are those of the machine.
import { join } from "node:path";
import { findBrowser } from "./browser.mjs";
import { node, ROOT } from "./run.mjs";
import { setUp, setUpProject } from "./setup.mjs";

try {
  await setUpProject();
  const browser = findBrowser();
  if (!browser) throw new Error("Pictures of the editor need Chromium or Chrome.");
  await setUp(join(ROOT, "test/editor"));
  const { build } = await import("./build.mjs");
  await build();
  const env = { ...process.env, KITQUILL_BROWSER: browser };
  const args = ["run", "--config=test/editor/pictures.config.ts"];
  process.exitCode = await node("node_modules/vitest/vitest.mjs", args, { env });
} catch (error) {
  console.error(error.message);
  process.exitCode = 1;
}
