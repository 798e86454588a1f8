// Writes what is told about the checks in several places from the checks themselves: the index of
// their pages, the table in the README, and the settings schema; and the reference pages of the trade
// functions, the settings, the command line and the JSON from what these are made of. `--check` writes
// nothing and fails when one is out of date.
import { readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { build } from "esbuild";
import { commandPage } from "./commandPage.mjs";
import { fieldTable } from "./fieldTable.mjs";
import { functionsPage } from "./functionsPage.mjs";
import { modulesPlugin } from "./modules.mjs";
import { ROOT } from "./run.mjs";
import { settingsPage } from "./settingsPage.mjs";
import { virtualModules } from "./virtualModules.mjs";

const PAGES = "server/docs/checks";
const SEVERITIES = ["off", "hint", "info", "warning", "error"];
const GROUPS = [
  ["parts", "Parts"],
  ["order", "Order"],
  ["figures", "Figures"],
  ["list", "Parts list"],
  ["form", "Form"],
  ["safety", "Safety"],
  ["wording", "Wording"],
];

/** What a module of the server exports. */
async function load(path) {
  const name = path.replaceAll("/", "-");
  const outfile = join(ROOT, `node_modules/.kitquill-${name}-${process.pid}.mjs`);
  await build({
    entryPoints: [join(ROOT, `server/src/${path}.ts`)],
    outfile,
    bundle: true,
    format: "esm",
    platform: "node",
    logLevel: "error",
    plugins: [modulesPlugin, virtualModules],
  });
  try {
    return await import(pathToFileURL(outfile).href);
  } finally {
    rmSync(outfile);
  }
}

/** The checks' own accounts of themselves, by code. */
async function readMetas() {
  const { CHECKS } = await load("checks/all");
  const metas = CHECKS.map((check) => check.meta);
  return metas.sort((a, b) => (a.code < b.code ? -1 : 1));
}

function settingOf(meta) {
  return meta.severity === "information" ? "info" : meta.severity;
}

/** The checks of one group as rows of a table; `folder` leads to their pages. */
function rows(metas, tag, folder) {
  return metas
    .filter((meta) => meta.tags[0] === tag)
    .map(
      (meta) =>
        `| [${meta.code}](${folder}${meta.code}.md) | ${meta.summary} | ${settingOf(meta)} |`,
    );
}

function table(lines) {
  return ["| Check | Finds | Default |", "|---|---|---|", ...lines].join("\n");
}

function indexPage(metas) {
  const groups = GROUPS.map(([tag, title]) => `## ${title}\n\n${table(rows(metas, tag, ""))}`);
  return `# Checks

Each check has a code and a page. \`checks: { ${metas[0].code}: off }\` in a guide's front matter, or \`kitquill.checks\` in the settings, sets how serious its findings are: ${SEVERITIES.join(", ")}. A check that has a limit takes a number in the same place (\`checks: { long-step: 25 }\`), or in \`kitquill.limits\`. The guide comes first.

${groups.join("\n\n")}

This page is written by \`npm run docs\`.
`;
}

/** A page with what is generated put between its lines `<!-- name:begin -->` and `<!-- name:end -->`. */
function filled(path, name, generated) {
  const text = read(path) ?? "";
  const [begin, end] = ["begin", "end"].map((one) => `<!-- ${name}:${one} -->`);
  const [start, stop] = [text.indexOf(begin), text.indexOf(end)];
  if (start < 0 || stop < start) {
    throw new Error(
      `${path} needs a line \`${begin}\` and below it a line \`${end}\`: what is generated goes between them.`,
    );
  }
  return `${text.slice(0, start)}${begin}\n${generated}\n${text.slice(stop)}`;
}

function readme(metas) {
  const all = GROUPS.flatMap(([tag]) => rows(metas, tag, `${PAGES}/`));
  return filled("README.md", "checks", table(all));
}

/** After the manifest is written: its settings are. */
function settings() {
  return settingsPage(JSON.parse(read("package.json")).contributes.configuration.properties);
}

function jsonPage() {
  const schema = JSON.parse(read("server/docs/guide.schema.json"));
  return filled("server/docs/json.md", "fields", fieldTable(schema));
}

function manifest(metas) {
  const manifest = JSON.parse(readFileSync(join(ROOT, "package.json"), "utf8"));
  const setting = manifest.contributes.configuration.properties["kitquill.checks"];
  setting.additionalProperties = { type: "string", enum: SEVERITIES };
  setting.properties = Object.fromEntries(
    metas.map((meta) => [
      meta.code,
      { type: "string", enum: SEVERITIES, default: settingOf(meta), description: meta.summary },
    ]),
  );
  const limits = manifest.contributes.configuration.properties["kitquill.limits"];
  limits.properties = Object.fromEntries(
    metas
      .filter(({ limit }) => limit)
      .map(({ code, limit }) => [
        code,
        { type: "number", exclusiveMinimum: 0, default: limit.default, description: limit.summary },
      ]),
  );
  return `${JSON.stringify(manifest, null, 2)}\n`;
}

const metas = await readMetas();
const { FUNCTION_GROUPS } = await load("trade/functions/all");
const { printAmount } = await load("quantity/printing");
const { TOPICS, helpOn } = await load("cli/help");
const help = {};
for (const topic of TOPICS) help[topic] = await helpOn(topic);
const stale = [];
for (const [path, write] of [
  [`${PAGES}/README.md`, indexPage],
  ["package.json", manifest],
  ["README.md", readme],
  ["server/docs/functions.md", () => functionsPage(FUNCTION_GROUPS, printAmount)],
  ["server/docs/command.md", () => commandPage(help)],
  ["server/docs/settings.md", settings],
  ["server/docs/json.md", jsonPage],
]) {
  const text = write(metas);
  if (text === read(path)) continue;
  stale.push(path);
  if (!process.argv.includes("--check")) writeFileSync(join(ROOT, path), text);
}

function read(path) {
  try {
    return readFileSync(join(ROOT, path), "utf8");
  } catch (error) {
    if (error.code === "ENOENT") return undefined;
    throw error;
  }
}

if (process.argv.includes("--check") && stale.length > 0) {
  console.error(
    `Out of date: ${stale.join(", ")}. Run \`npm run docs\` and commit what it writes.`,
  );
  process.exit(1);
}
console.log(
  stale.length > 0
    ? `Written: ${stale.join(", ")}.`
    : "All that is generated of the docs is up to date.",
);
