// npm run package: makes kitquill-VERSION.vsix and checks what is in it.
import { readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { createVSIX } from "@vscode/vsce";
import yauzl from "yauzl";
import { build } from "./build.mjs";
import { thirdPartyLicences } from "./licences.mjs";
import { node, ROOT } from "./run.mjs";

const LARGEST_BYTES = 1_000_000;
/** The packer gives the texts a user reads its own names. */
const REQUIRED = [
  "extension/package.json",
  "extension/readme.md",
  "extension/changelog.md",
  "extension/LICENSE.txt",
  "extension/media/icon.png",
  "extension/server/docs/README.md",
  "extension/server/docs/checks/README.md",
  "extension/dist/client.cjs",
  "extension/dist/client-web.js",
  "extension/dist/preview-page.js",
  "extension/dist/preview-page.css",
  "extension/dist/server.mjs",
  "extension/dist/server-worker.js",
  "extension/dist/worker.mjs",
  "extension/dist/kitquill.mjs",
  "extension/dist/THIRD-PARTY-LICENSES.txt",
  "extension/syntaxes/kitquill-guide.tmLanguage.json",
  "extension/syntaxes/kitquill-comments.tmLanguage.json",
];
const FORBIDDEN = /node_modules|\.map$|\.ts$|\/meta\/|\/test\/|\/src\/|\/\.(?!vsixmanifest)/;

/** Paths of the files in a zip archive. */
async function filesIn(archive) {
  const names = [];
  const zip = await yauzl.openPromise(archive, { lazyEntries: true });
  for await (const entry of zip.eachEntry()) names.push(entry.fileName);
  return names;
}

/** What is wrong with a package; empty when it is in order. */
async function faults(archive) {
  const files = await filesIn(archive);
  const missing = REQUIRED.filter((name) => !files.includes(name)).map(
    (name) => `${name} is missing`,
  );
  const unwanted = files
    .filter((name) => FORBIDDEN.test(name))
    .map((name) => `${name} is not wanted`);
  const { size } = statSync(archive);
  const tooLarge = size > LARGEST_BYTES ? [`it has ${size} bytes, more than ${LARGEST_BYTES}`] : [];
  return [...missing, ...unwanted, ...tooLarge];
}

const { name, version, repository } = JSON.parse(readFileSync(join(ROOT, "package.json"), "utf8"));
const archive = join(ROOT, `${name}-${version}.vsix`);
// What an older build has left there would be packed.
rmSync(join(ROOT, "dist"), { recursive: true, force: true });
await build({ minify: true });
writeFileSync(join(ROOT, "dist/THIRD-PARTY-LICENSES.txt"), thirdPartyLicences());
await createVSIX({
  cwd: ROOT,
  packagePath: archive,
  dependencies: false,
  allowMissingRepository: true,
  // Pages are packed, pictures are not: with a repository they are shown from there.
  rewriteRelativeLinks: repository !== undefined,
});
const wrong = await faults(archive);
if ((await node("dist/kitquill.mjs", ["--help"])) !== 0) wrong.push("kitquill --help fails");
for (const fault of wrong) console.error(`The package is not in order: ${fault}.`);
if (wrong.length === 0) console.log(`${name}-${version}.vsix is in order.`);
process.exitCode = wrong.length === 0 ? 0 : 1;
