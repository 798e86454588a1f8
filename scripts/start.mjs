// npm start: sets up what is missing, builds, and checks the sample guides.
import { existsSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { node, ROOT } from "./run.mjs";
import { setUpProject } from "./setup.mjs";

const CLI = "dist/kitquill.mjs";
/** The command line's exit code for input or arguments that it cannot use. */
const UNUSABLE = 2;

/** Sample folders: those with planted faults have it in their name; hostile ones are for tests. */
function samples() {
  const entries = readdirSync(join(ROOT, "samples"), { withFileTypes: true });
  const names = entries.filter((entry) => entry.isDirectory()).map((entry) => entry.name);
  const shown = names.filter((name) => !name.includes("hostile")).sort();
  return {
    clean: shown.filter((name) => !name.includes("fault")),
    faulty: shown.filter((name) => name.includes("fault")),
  };
}

/** Checks the folders in one run, as a user would. */
async function check(title, names) {
  const folders = names.map((name) => `samples/${name}`);
  console.log(`\n${title}\n$ kitquill check ${folders.join(" ")}\n`);
  const code = await node(CLI, ["check", ...folders]);
  if (code >= UNUSABLE) throw new Error(`kitquill check ended with exit code ${code}.`);
}

try {
  await setUpProject();
  const { build } = await import("./build.mjs");
  await build();
  if (!existsSync(join(ROOT, CLI))) throw new Error(`The build made no ${CLI}.`);
  const { clean, faulty } = samples();
  if (clean.length > 0) await check("Guides in order:", clean);
  if (faulty.length > 0) await check("The same with faults planted in it:", faulty);
} catch (error) {
  console.error(error.message);
  process.exitCode = 1;
}
