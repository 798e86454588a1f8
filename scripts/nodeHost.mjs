// Sets up the editor build of test/node-host, which needs more than an install without scripts gives:
// the workbench's own dependencies, four native modules built against this machine's Node, and links.
import { existsSync, mkdirSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { ROOT, run } from "./run.mjs";
import { npm, setUp } from "./setup.mjs";

const FOLDER = join(ROOT, "test/node-host");
const MODULES = join(FOLDER, "node_modules");
const SERVER = join(MODULES, "code-server");
const WORKBENCH = join(SERVER, "lib/vscode");
const READY = join(MODULES, ".kitquill-ready");
/** Folder of a native module, and what its build must be told beside where Node is. */
const NATIVE = [
  [join(MODULES, "argon2"), ["--", "-Dmodule_name=argon2", "-Dmodule_path=./lib/binding/napi-v3"]],
  [join(WORKBENCH, "node_modules/@vscode/spdlog"), []],
  [join(WORKBENCH, "node_modules/native-watchdog"), []],
  [join(WORKBENCH, "node_modules/node-pty"), []],
];

/** The script that serves the editor. */
export const ENTRY = join(SERVER, "out/node/entry.js");

/** Does nothing when all is there. Takes some minutes the first time, and a C++ compiler. */
export async function setUpNodeHost() {
  const isNew = await setUp(FOLDER);
  if (!isNew && existsSync(READY)) return;
  for (const folder of [WORKBENCH, join(WORKBENCH, "extensions")]) {
    const install = ["install", "--ignore-scripts", "--omit=dev", "--no-audit", "--no-fund"];
    if ((await npm(install, folder)) !== 0) throw new Error(`npm install failed in ${folder}.`);
  }
  for (const [folder, more] of NATIVE) await buildNative(folder, more);
  link("node_modules", join(WORKBENCH, "node_modules.asar"));
  const search = await find("rg");
  mkdirSync(join(WORKBENCH, "node_modules/@vscode/ripgrep/bin"), { recursive: true });
  link(search, join(WORKBENCH, "node_modules/@vscode/ripgrep/bin/rg"));
  writeFileSync(READY, "");
}

async function buildNative(folder, more) {
  const gyp = join(dirname(npmScript()), "../node_modules/node-gyp/bin/node-gyp.js");
  const nodeFolder = dirname(dirname(process.execPath));
  const args = [gyp, "rebuild", `--nodedir=${nodeFolder}`, ...more];
  const code = await run(process.execPath, args, { cwd: folder });
  if (code !== 0)
    throw new Error(`${folder} could not be built; what the compiler said stands above.`);
}

/** The npm beside this Node, or the one that runs this script. */
function npmScript() {
  const beside = join(dirname(process.execPath), "../lib/node_modules/npm/bin/npm-cli.js");
  return existsSync(beside) ? beside : (process.env.npm_execpath ?? beside);
}

function link(target, at) {
  rmSync(at, { force: true });
  symlinkSync(target, at);
}

async function find(program) {
  const folders = (process.env.PATH ?? "").split(":");
  const path = folders.map((folder) => join(folder, program)).find((one) => existsSync(one));
  if (!path) throw new Error(`\`${program}\` is missing: apt-get install -y ripgrep.`);
  return path;
}
