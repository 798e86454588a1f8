// Collects the licences of the packages whose code is in our bundles.
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { BUILDS } from "./build.mjs";
import { ROOT } from "./run.mjs";

const PACKAGE = /^(?:.*\/)?node_modules\/((?:@[^/]+\/)?[^/]+)\//;
const LICENCE_FILE = /^(licen[cs]e|copying)(\..*)?$/i;

/** Folders of the bundled packages, from esbuild's accounts of the bundles. */
function bundledFolders() {
  const folders = new Set();
  for (const { name } of BUILDS) {
    const account = join(ROOT, `dist/meta/${name}.json`);
    if (!existsSync(account)) continue;
    for (const input of Object.keys(JSON.parse(readFileSync(account, "utf8")).inputs)) {
      const match = PACKAGE.exec(input);
      if (match) folders.add(match[0].slice(0, -1));
    }
  }
  return [...folders].sort();
}

/**
 * The packages whose code is bundled: their manifests.
 * @returns {{ name: string, version: string, license?: string, folder: string }[]}
 */
export function bundledPackages() {
  return bundledFolders().map((folder) => {
    const manifest = JSON.parse(readFileSync(join(ROOT, folder, "package.json"), "utf8"));
    return { ...manifest, folder };
  });
}

/**
 * The text of all licences, one package after the other.
 * @throws when a package brings no licence text and names no licence
 */
export function thirdPartyLicences() {
  const parts = bundledPackages().map(({ name, version, license, folder }) => {
    const file = readdirSync(join(ROOT, folder)).find((entry) => LICENCE_FILE.test(entry));
    if (!file && !license) throw new Error(`${name} ${version} names no licence.`);
    const text = file ? readFileSync(join(ROOT, folder, file), "utf8").trim() : `(${license})`;
    return `${name} ${version}\n\n${text}\n`;
  });
  const line = `\n${"-".repeat(72)}\n\n`;
  return `Kitquill contains code of these packages.\n${line}${parts.join(line)}`;
}
