// What must be right before a version goes out. Each check is a function from texts to faults, so that
// the tests can hold it to right and to wrong ones.

/** The categories that the editor's marketplaces know. */
const CATEGORIES = new Set([
  ..."AI,Azure,Chat,Data Science,Debuggers,Education,Extension Packs,Formatters,Keymaps".split(","),
  ..."Language Packs,Linters,Machine Learning,Notebooks,Programming Languages,SCM Providers".split(
    ",",
  ),
  ..."Snippets,Testing,Themes,Visualization,Other".split(","),
]);
const MOST_KEYWORDS = 30;
const SMALLEST_ICON = 128;
const VERSION = /^\d+\.\d+\.\d+$/;
/** Licences that ask for no more than their text beside the code. */
const PERMISSIVE = /^\(?(?:MIT|ISC|0BSD|BSD-2-Clause|BSD-3-Clause|Apache-2\.0|BlueOak-1\.0\.0)\b/;

/**
 * @param manifest package.json
 * @param {(path: string) => boolean} isThere whether the repository has a file
 * @returns {string[]} what is wrong with it
 */
export function manifestFaults(manifest, isThere) {
  const { version, displayName, description, publisher, license, categories, keywords } = manifest;
  const unknown = (categories ?? []).filter((one) => !CATEGORIES.has(one));
  return [
    !VERSION.test(version ?? "") && `the version \`${version}\` is not three numbers`,
    !displayName && "it has no displayName",
    !description && "it has no description",
    !publisher && "it has no publisher",
    !license && "it names no licence",
    !categories?.length && "it has no categories",
    unknown.length > 0 && `no marketplace knows the category ${unknown.join(", ")}`,
    !keywords?.length && "it has no keywords",
    keywords?.length > MOST_KEYWORDS && `it has more than ${MOST_KEYWORDS} keywords`,
    ...walkthroughFaults(manifest.contributes?.walkthroughs, isThere),
  ].filter(Boolean);
}

function walkthroughFaults(walkthroughs, isThere) {
  const steps = walkthroughs?.flatMap((one) => one.steps) ?? [];
  if (steps.length === 0) return ["it has no walkthrough"];
  return steps
    .map(({ media }) => media?.markdown ?? media?.image ?? media?.svg)
    .filter((path) => !path || !isThere(path))
    .map((path) => `the walkthrough shows \`${path}\`, which is not there`);
}

/** What a user must know before anything goes out, and only the owner of the project can say. */
export function ownersFaults({ repository }) {
  const url = repository?.url ?? repository;
  return /^(?:git\+)?https:\/\/\S+$/.test(url ?? "")
    ? []
    : ["package.json names no `repository`: users look there for the sources and to report faults"];
}

/** @param {Buffer} png */
export function iconFaults(png) {
  if (png.subarray(1, 4).toString("latin1") !== "PNG") return ["the icon is no PNG"];
  const width = png.readUInt32BE(16);
  const height = png.readUInt32BE(20);
  return width === height && width >= SMALLEST_ICON
    ? []
    : [`the icon has ${width} × ${height} pixels; wanted is a square of at least ${SMALLEST_ICON}`];
}

/** @param {string} text of CHANGELOG.md */
export function changeLogFaults(text, version) {
  const [, ...sections] = text.split(/^## /m);
  const [heading = "", ...lines] = (sections[0] ?? "").split("\n");
  if (!new RegExp(`^${version.replaceAll(".", "\\.")}(?: |$)`).test(heading)) {
    return [`the change log begins with \`${heading}\`, not with ${version}`];
  }
  return lines.some((line) => line.trim() !== "")
    ? []
    : [`the change log says nothing of ${version}`];
}

/** @param lock package-lock.json */
export function lockFaults(lock, version) {
  const versions = [lock.version, lock.packages?.[""]?.version];
  return versions.every((one) => one === version)
    ? []
    : [`package-lock.json is of ${versions.join(" and ")}: run \`npm install\``];
}

/**
 * @param {string} list of licences as it is packed
 * @param {{ name: string, version: string, license?: string }[]} packages those whose code is bundled
 */
export function licenceFaults(list, packages) {
  const missing = packages
    .filter(({ name, version }) => !list.includes(`${name} ${version}\n`))
    .map(({ name, version }) => `${name} ${version} is not in the list of licences`);
  const strict = packages
    .filter(({ license }) => !PERMISSIVE.test(license ?? ""))
    .map(
      ({ name, license }) => `${name} has the licence ${license}, which must be looked at first`,
    );
  return [...missing, ...strict];
}
