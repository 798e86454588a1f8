// Makes node_modules what package-lock.json says; does nothing when it already is.
// Node's own modules only: this runs before anything is installed.
import { createHash } from "node:crypto";
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { ROOT, run } from "./run.mjs";

const STAMP = "node_modules/.kitquill-lock";
const OLDEST_NODE = 20;

/**
 * Installs what the lock file of a folder names, without running install scripts.
 * @param {string} folder holds package.json and package-lock.json
 * @returns {Promise<boolean>} whether an install was needed
 */
export async function setUp(folder) {
  const stamp = join(folder, STAMP);
  const wanted = lockHash(folder);
  if (existsSync(stamp) && readFileSync(stamp, "utf8") === wanted) return false;
  const code = await npm(["ci", "--ignore-scripts", "--no-audit", "--no-fund"], folder);
  if (code !== 0) throw new Error(`npm ci failed in ${folder}; what it said stands above.`);
  writeFileSync(stamp, wanted);
  return true;
}

/** Some packages are built for one platform, so that counts too. */
function lockHash(folder) {
  const hash = createHash("sha256").update(readFileSync(join(folder, "package-lock.json")));
  return hash.update(`${process.platform} ${process.arch}`).digest("hex");
}

/** The npm that runs this script, else the one on the path. */
export function npm(args, cwd) {
  const script = process.env.npm_execpath;
  if (script?.endsWith("js")) return run(process.execPath, [script, ...args], { cwd });
  return run("npm", args, { cwd, shell: process.platform === "win32" });
}

/** Sets up the project itself. */
export async function setUpProject() {
  const major = Number(process.versions.node.split(".")[0]);
  if (major < OLDEST_NODE) {
    throw new Error(`Kitquill needs Node ${OLDEST_NODE} or newer; this is ${process.version}.`);
  }
  if (await setUp(ROOT)) console.log("Packages are installed.");
}

if (import.meta.url === pathToFileURL(process.argv[1]).href) {
  try {
    await setUpProject();
  } catch (error) {
    console.error(error.message);
    process.exitCode = 1;
  }
}
