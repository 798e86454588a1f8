// npm run release -- --dry-run: makes the VSIX and the npm package from a clean clone of the last
// commit, checks what must be right before they go out, and drives the packed extension in an editor.
// Without --dry-run it sets the tag as well, and says how to publish. It never publishes by itself.
import { spawnSync } from "node:child_process";
import { copyFileSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";
import { pathToFileURL } from "node:url";
import { findBrowser } from "./browser.mjs";
import { setUpNodeHost } from "./nodeHost.mjs";
import {
  changeLogFaults,
  iconFaults,
  licenceFaults,
  lockFaults,
  manifestFaults,
  ownersFaults,
} from "./releaseChecks.mjs";
import { node, ROOT, run } from "./run.mjs";
import { npm, setUpProject } from "./setup.mjs";

const READY = join(ROOT, "dist/release");

/** What git answers, without the line's end. */
function git(...args) {
  const { status, stdout, stderr } = spawnSync("git", args, { cwd: ROOT, encoding: "utf8" });
  if (status !== 0) throw new Error(`git ${args.join(" ")}: ${stderr.trim()}`);
  return stdout.trim();
}

/** Runs a step in the clone. */
async function must(what, code) {
  if ((await code) !== 0) throw new Error(`${what} failed; what it said stands above.`);
}

function readJson(path) {
  return JSON.parse(readFileSync(path, "utf8"));
}

/** Builds both packages in the clone; gives their paths. */
async function makePackages(clone, { name, version }) {
  const inClone = (script, args = []) =>
    run(process.execPath, [join(clone, script), ...args], { cwd: clone });
  await must("npm ci", inClone("scripts/setup.mjs"));
  await must("npm run docs -- --check", inClone("scripts/docs.mjs", ["--check"]));
  await must("npm run package", inClone("scripts/package.mjs"));
  await must("npm pack", npm(["pack", "--ignore-scripts", "--loglevel=error"], clone));
  return [`${name}-${version}.vsix`, `${name}-${version}.tgz`].map((file) => join(clone, file));
}

async function faultsOf(clone, manifest) {
  const { bundledPackages } = await import(pathToFileURL(join(clone, "scripts/licences.mjs")).href);
  const text = (path) => readFileSync(join(clone, path), "utf8");
  return [
    ...manifestFaults(manifest, (path) => existsSync(join(clone, path))),
    ...iconFaults(readFileSync(join(clone, manifest.icon))),
    ...changeLogFaults(text("CHANGELOG.md"), manifest.version),
    ...lockFaults(readJson(join(clone, "package-lock.json")), manifest.version),
    ...licenceFaults(text("dist/THIRD-PARTY-LICENSES.txt"), bundledPackages()),
  ];
}

/** Installs the npm package into an empty folder and checks a sample with it, as its user would. */
async function tryCommand(clone, tarball, { version }) {
  const folder = mkdtempSync(join(tmpdir(), "kitquill-npm-"));
  try {
    const install = ["install", "--ignore-scripts", "--no-audit", "--no-fund", "--prefix", folder];
    await must("npm install of the package", npm([...install, tarball], folder));
    // By the link that npm makes for the path.
    const command = join(folder, "node_modules/.bin/kitquill");
    const shell = process.platform === "win32";
    const shown = spawnSync(command, ["--version"], { encoding: "utf8", shell });
    if (shown.stdout?.trim() !== version) {
      throw new Error(`kitquill --version says ${shown.stdout}${shown.stderr}`);
    }
    const sample = join(clone, "samples/plover");
    await must("kitquill check", run(command, ["check", sample], { shell }));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Drives the packed extension in an editor whose extensions run in Node. */
async function tryExtension(vsix) {
  const browser = findBrowser();
  if (!browser) throw new Error("The journey in a real editor needs Chromium or Chrome.");
  await setUpNodeHost();
  const env = { ...process.env, KITQUILL_BROWSER: browser, KITQUILL_VSIX: vsix };
  const args = ["run", "--config=test/node-host/vitest.config.ts"];
  await must("The journey", node("node_modules/vitest/vitest.mjs", args, { env }));
}

function instructions(tag, [vsix, tarball]) {
  return `Tagged ${tag}. Nothing has been sent anywhere. What is left to you:

  git push origin ${tag}
  npx vsce publish --packagePath dist/release/${vsix}
  npm publish dist/release/${tarball}`;
}

async function release({ dryRun }) {
  await setUpProject();
  const changed = git("status", "--porcelain");
  if (changed && !dryRun) throw new Error(`There is what is not committed:\n${changed}`);
  if (changed) console.log(`Not in the packages, since it is not committed:\n${changed}\n`);
  const clone = mkdtempSync(join(tmpdir(), "kitquill-release-"));
  try {
    git("clone", "--quiet", ROOT, clone);
    const manifest = readJson(join(clone, "package.json"));
    const tag = `v${manifest.version}`;
    const packages = await makePackages(clone, manifest);
    const faults = await faultsOf(clone, manifest);
    if (git("tag", "--list", tag)) faults.push(`the tag ${tag} exists already`);
    const open = ownersFaults(manifest);
    for (const fault of faults) console.error(`Not in order: ${fault}.`);
    for (const fault of open) console.error(`To be settled before it goes out: ${fault}.`);
    if (faults.length > 0 || (open.length > 0 && !dryRun)) return 1;
    await tryCommand(clone, packages[1], manifest);
    await tryExtension(packages[0]);
    const names = keep(packages);
    if (dryRun)
      console.log(`${names.join(" and ")} are in order, in dist/release. Dry run: no tag.`);
    else {
      git("tag", "--annotate", tag, "--message", `Kitquill ${manifest.version}`);
      console.log(instructions(tag, names));
    }
    return 0;
  } finally {
    rmSync(clone, { recursive: true, force: true });
  }
}

/** Copies the packages out of the clone; gives their names. */
function keep(packages) {
  mkdirSync(READY, { recursive: true });
  return packages.map((path) => {
    copyFileSync(path, join(READY, basename(path)));
    return basename(path);
  });
}

try {
  process.exitCode = await release({ dryRun: process.argv.includes("--dry-run") });
} catch (error) {
  console.error(error.message);
  process.exitCode = 1;
}
