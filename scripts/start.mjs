// npm start: sets up what is missing, builds, and checks the sample guides. One kit with planted faults
// is shown in full; of the others the last line.
import { spawnSync } from "node:child_process";
import { existsSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { ROOT } from "./run.mjs";
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

/** Checks a folder as a user would, and prints what the command says, or its last line. */
function check(name, { inFull = false } = {}) {
  const folder = `samples/${name}`;
  const run = [join(ROOT, CLI), "check", folder];
  const { status, stdout } = spawnSync(process.execPath, run, {
    cwd: ROOT,
    encoding: "utf8",
    stdio: ["ignore", "pipe", "inherit"],
  });
  if (status === null || status >= UNUSABLE) {
    throw new Error(`kitquill check ${folder} ended with exit code ${status}.`);
  }
  const said = stdout.trim();
  console.log(`$ kitquill check ${folder}`);
  console.log(inFull ? `\n${said}\n` : (said.split("\n").at(-1) ?? ""));
}

try {
  await setUpProject();
  const { build } = await import("./build.mjs");
  await build();
  if (!existsSync(join(ROOT, CLI))) throw new Error(`The build made no ${CLI}.`);
  const { clean, faulty } = samples();
  console.log("\nThe sample kits (the last line of what the command says):\n");
  for (const name of clean) check(name);
  console.log("\nThe same with faults planted in them:\n");
  for (const name of faulty) check(name);
  console.log("\nOne of these in full:\n");
  check(faulty.at(-1), { inFull: true });
} catch (error) {
  console.error(error.message);
  process.exitCode = 1;
}
