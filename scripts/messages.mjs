// npm run messages: all that Kitquill says to its users, in one list to be read: findings and fixes by
// check, what the command line and the editor say, and the texts of the manifest. They are collected
// from the sources, so none is left out and none is kept twice.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { ROOT } from "./run.mjs";
import { sayingsIn } from "./sayings.mjs";
import { sourcesOf } from "./sources.mjs";

/** Where messages are made, by the heading that they get. The first that fits a file counts. */
const GROUPS = [
  ["Findings, by check", /^server\/src\/checks\//],
  ["Slips in marks, figures and front matter", /^server\/src\/(?:syntax|quantity)\//],
  ["Parts lists and guides", /^server\/src\/(?:model|workspace)\//],
  ["Trade functions", /^server\/src\/trade\/functions\//],
  ["Command line", /^server\/src\/cli\//],
  ["Publishing", /^server\/src\/publish\/(?:outputs|packing|narration)\//],
  ["Hovers, completions and actions", /^server\/src\/(?:features|lsp)\//],
  ["Editor", /^client\//],
];
/** Words of the published page, of new guides and of the trade: data in several languages. */
const NO_MESSAGES = /\/(?:words|verbs)(?:\/|\.ts$)/;
/** What a library says: the sources compare it, and say it to nobody. */
const NOT_OURS = new Set(["The element can't be renamed."]);
const CHECK = /^server\/src\/checks\/([a-z-]+)\.ts$/;

/**
 * All messages by heading, then by check or file.
 * @returns {Promise<Map<string, Map<string, string[]>>>}
 */
export async function collectMessages() {
  const groups = new Map(GROUPS.map(([title]) => [title, new Map()]));
  for (const file of sourcesOf(["server/src", "client/src", "client/page"])) {
    const [title] = GROUPS.find(([, pattern]) => pattern.test(file)) ?? [];
    if (!title || NO_MESSAGES.test(file)) continue;
    const all = await sayingsIn(readFileSync(join(ROOT, file), "utf8"));
    const sayings = all.filter((text) => !NOT_OURS.has(text));
    if (sayings.length > 0) groups.get(title).set(CHECK.exec(file)?.[1] ?? file, sayings);
  }
  const manifest = JSON.parse(readFileSync(join(ROOT, "package.json"), "utf8"));
  groups.set("Manifest", manifestTexts(manifest));
  return groups;
}

const SHOWN =
  /^(?:title|name|displayName|description|markdownDescription|contents|enumDescriptions)$/;

/** What the editor shows of the manifest, by contribution. */
function manifestTexts({ description, capabilities, contributes }) {
  const parts = { description: { description }, capabilities, ...contributes };
  return new Map(
    Object.entries(parts)
      .map(([key, part]) => [key, [...textsUnder(part)]])
      .filter(([, texts]) => texts.length > 0),
  );
}

function* textsUnder(value, key = "") {
  if (typeof value === "string" && SHOWN.test(key)) yield value;
  if (typeof value !== "object" || value === null) return;
  for (const [name, part] of Object.entries(value)) {
    yield* textsUnder(part, Array.isArray(value) ? key : name);
  }
}

if (import.meta.url === pathToFileURL(process.argv[1]).href) {
  for (const [title, parts] of await collectMessages()) {
    console.log(`\n# ${title}`);
    for (const [part, sayings] of parts) {
      console.log(`\n${part}`);
      for (const saying of sayings) console.log(`  ${saying.trimEnd().replaceAll("\n", "\n    ")}`);
    }
  }
}
