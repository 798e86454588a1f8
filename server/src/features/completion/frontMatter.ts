/** Completion of the front matter: its keys, the names below them, and their values. */
import { CHECKS } from "../../checks/all.ts";
import type { GuideState } from "../../model/guideState.ts";
import { MEANINGS } from "../../model/list/partsList.ts";
import { FRONT_MATTER_KEYS, RATED } from "../../syntax/frontMatterReader.ts";
import { quoteYaml } from "../../syntax/yaml/tree.ts";
import { LANGUAGES } from "../../text/language.ts";
import type { TextSource } from "../../text/textSource.ts";
import type { Completion, Completions } from "./completion.ts";
import { expressionItems } from "./figure.ts";
import { readFigureWriting } from "./figureWriting.ts";
import { type FrontMatterWriting, readFrontMatterWriting } from "./frontMatterWriting.ts";
import { hardwareKeys } from "./hardware.ts";
import { usedTexts } from "./usedTexts.ts";

type Key = (typeof FRONT_MATTER_KEYS)[number];

/** What a key holds: one text, a list in brackets, or names with values in braces. */
const KEYS: Readonly<
  Record<Key, { readonly holds: "text" | "list" | "map"; readonly about: string }>
> = {
  title: { holds: "text", about: "What the guide is called." },
  language: { holds: "text", about: "The language of the guide: `en`, `de`, `pt-BR`." },
  parts: { holds: "text", about: "The parts list, or one for each board: `{ main: a.csv }`." },
  pages: { holds: "list", about: "Further files of this guide, in order." },
  supply: { holds: "map", about: "Rails and their voltages, for figures: `{ VCC: 12 V ± 5 % }`." },
  figures: { holds: "map", about: "Figures of the whole guide: `{ Iq: 45 mA ± 10 % }`." },
  heights: { holds: "map", about: "Body heights by part, range or package: `{ K2: 11 mm }`." },
  "off-board": { holds: "list", about: "Parts with no place in a board's height order." },
  clearance: { holds: "map", about: "Room above each board: `{ main: 24 mm }`." },
  tools: { holds: "list", about: "Tools that the whole guide needs." },
  columns: { holds: "map", about: "Columns of the parts list, where the guess is wrong." },
  checks: { holds: "map", about: "How serious each check is here: `{ long-step: off }`." },
  derating: {
    holds: "map",
    about: "Shares of a rating above which a load is reported: `{ power: 60 %, voltage: 80 % }`.",
  },
  spares: { holds: "map", about: "Pieces to spare by line: `{ M3x6: 2 }`." },
};

const SEVERITIES = ["off", "hint", "info", "warning", "error"];

export function completeFrontMatter(
  guide: GuideState,
  text: TextSource,
  offset: number,
): Completions | undefined {
  const writing = readFrontMatterWriting(text.slice(0, offset));
  if (!writing) return undefined;
  const isSum =
    writing.name !== undefined && (writing.key === "supply" || writing.key === "figures");
  const typed = isSum ? readFigureWriting(writing.typed).typed : writing.typed;
  const [tail, word] = tailAt(text, offset);
  const found = itemsFor(guide, writing, writing.typed + word);
  if (!found || found.length === 0) return undefined;
  // A key brings its colon.
  const isKey = found.every(({ kind }) => kind === "key");
  const end = offset + (isKey ? tail : word).length;
  const span = { start: offset - typed.length, end };
  const items = writing.isOpened ? found : found.map((item) => inBrackets(item, writing.key));
  return { span, items, complete: true };
}

/** The rest of the word at the cursor: with a colon that follows, and without. */
function tailAt(text: TextSource, offset: number): readonly [tail: string, word: string] {
  const [tail, word] = /^([\p{L}\p{N}_-]*)(?:: ?)?/u.exec(text.slice(offset, offset + 80))!;
  return [tail, word!];
}

/** `word` is the whole one at the cursor. */
function itemsFor(guide: GuideState, { key, name, typed }: FrontMatterWriting, word: string) {
  if (key === undefined) return keyItems(guide, word);
  if (name !== undefined) return valuesOf(guide, key, name, typed);
  return namesOf(guide, key);
}

/** Those that are not there yet, and the one at the cursor. */
function keyItems(guide: GuideState, own: string): Completion[] {
  const { keys } = guide.frontMatter;
  return FRONT_MATTER_KEYS.filter((key) => key === own || !keys.has(key)).map((key) => ({
    label: key,
    kind: "key",
    text: `${key}: `,
    leadsOn: true,
    documentation: () => KEYS[key].about,
  }));
}

/** Names below a key, entries of a list, or the values of a key that holds one text. */
function namesOf(guide: GuideState, key: string): Completion[] | undefined {
  switch (key) {
    case "language":
      return LANGUAGES.map((label) => ({ label, kind: "value" }));
    case "checks":
      return CHECKS.map(({ meta }) => ({
        ...nameItem(meta.code),
        documentation: () => meta.summary,
      }));
    case "columns":
      return MEANINGS.map(nameItem);
    case "heights":
      return withoutHeight(guide).map(nameItem);
    case "clearance":
      return guide.boards.map(nameItem);
    case "derating":
      return RATED.map(nameItem);
    case "spares":
      return hardwareKeys(guide).map(nameItem);
    case "off-board":
      return withoutHeight(guide).map((label) => ({ label, kind: "part" }));
    case "tools":
      return [...usedTexts(guide, "tool")];
    default:
      return undefined;
  }
}

function valuesOf(
  guide: GuideState,
  key: string,
  name: string,
  typed: string,
): Completion[] | undefined {
  switch (key) {
    case "checks":
      return severityItems(name);
    case "columns":
      return headers(guide).map((label) => ({ label, kind: "value", text: plainOrQuoted(label) }));
    case "supply":
    case "figures":
      return expressionItems(guide, typed);
    default:
      return undefined;
  }
}

function nameItem(name: string): Completion {
  return { label: name, kind: "key", text: `${plainOrQuoted(name)}: `, leadsOn: true };
}

function severityItems(code: string): Completion[] {
  const meta = CHECKS.find((check) => check.meta.code === code)?.meta;
  const usual = meta?.severity === "information" ? "info" : meta?.severity;
  return SEVERITIES.map((label) => ({
    label,
    kind: "value",
    ...(label === usual && { detail: "as it is by default" }),
  }));
}

/** Packages and parts whose body height nothing tells, packages first. */
function withoutHeight(guide: GuideState): string[] {
  const packages = new Set<string>();
  const names: string[] = [];
  for (const part of guide.parts) {
    if (part.height || part.offBoard || !part.fitted) continue;
    const footprint = part.line.cells.package?.text.replace(/^[^:]*:/, "");
    if (footprint) packages.add(footprint);
    names.push(part.name);
  }
  return [...packages, ...names].slice(0, 200);
}

function headers(guide: GuideState): string[] {
  const found = guide.lists.flatMap((list) => list.columns.map(({ header }) => header));
  return [...new Set(found)].filter((header) => header !== "");
}

function plainOrQuoted(text: string): string {
  return /^[\p{L}\p{N}][\p{L}\p{N} ._/×µΩ–-]*$/u.test(text) ? text : quoteYaml(text);
}

/** The first entry of a key brings the brackets or braces that hold it. */
function inBrackets(item: Completion, key: string | undefined): Completion {
  const holds = KEYS[key as Key]?.holds;
  const text = (item.text ?? item.label).replace(/[$}\\]/g, "\\$&");
  if (holds === "map") return { ...item, text: `{ ${text}$0 }`, isSnippet: true };
  if (holds === "list") return { ...item, text: `[${text}$0]`, isSnippet: true };
  return item;
}
