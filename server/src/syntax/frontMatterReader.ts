/** Reads the front matter of a Markdown page: finds it, parses its YAML, and reads each known key. */
import { nearestWord } from "../text/nearest.ts";
import type { Span } from "../text/span.ts";
import type { FrontMatter, FrontMatterProblem } from "./frontMatter.ts";
import { type Fences, findFences } from "./frontMatterFence.ts";
import { ValueReader } from "./frontMatterValues.ts";
import { readYaml } from "./yaml/read.ts";
import type { YamlEntry } from "./yaml/tree.ts";

/** Keys of a front matter, in the order in which documentation lists them. */
export const FRONT_MATTER_KEYS = [
  "title",
  "language",
  "parts",
  "pages",
  "supply",
  "figures",
  "heights",
  "off-board",
  "clearance",
  "tools",
  "columns",
  "checks",
  "derating",
  "spares",
] as const;

/** What `derating` gives a share of; that of voltages holds for currents, too. */
export const RATED = ["power", "voltage"] as const;

/** Longer than any front matter in earnest; parsing stays below a second. */
const MAX_LENGTH = 100_000;

const PARTS_LINE = /(?<=[\r\n])(["']?)parts\1[ \t]*:(?:[ \t]+([^\s#][^\r\n]*))?(?=[\r\n]|$)/g;

/**
 * The front matter of a page, or undefined when its text does not open with a `---` line.
 * An opening line that nothing closes counts only where `parts` stands below it. Never throws; all
 * spans lie in `text`. `text` is without byte-order mark.
 */
export function readFrontMatter(text: string): FrontMatter | undefined {
  const fences = findFences(text);
  if (!fences) return undefined;
  if (!fences.closed && !findPartsLine(text, fences)) return undefined;
  const problems: FrontMatterProblem[] = [];
  if (!fences.closed) problems.push(unclosed(text, fences));
  const found = readKeys(text, fences, problems);
  problems.sort((a, b) => a.span.start - b.span.start || a.span.end - b.span.end);
  return { span: fences.span, ...found, problems };
}

/** Whether the Markdown text is a guide: its front matter has the key `parts`. Cheap for others. */
export function isGuide(text: string): boolean {
  const fences = findFences(text);
  if (!fences) return false;
  if (findPartsLine(text, fences)) return true;
  const inBraces = /^\s*\{/.test(text.slice(fences.body.start, fences.body.end));
  return inBraces && readFrontMatter(text)!.keys.has("parts");
}

type Found = Omit<FrontMatter, "span" | "problems">;

function readKeys(text: string, fences: Fences, problems: FrontMatterProblem[]): Found {
  const entries = topEntries(text, fences, problems);
  const broken = problems.map(({ span }) => span);
  // What YAML has misread is not judged a second time.
  const report = (problem: FrontMatterProblem) => {
    if (!broken.some((span) => overlaps(span, problem.span))) problems.push(problem);
  };
  const known = new Map<string, YamlEntry>();
  for (const entry of entries) {
    if ((FRONT_MATTER_KEYS as readonly string[]).includes(entry.name)) known.set(entry.name, entry);
  }
  if (!known.has("parts")) {
    const line = findPartsLine(text, fences);
    if (line) known.set("parts", line);
  }
  const values = new ValueReader(text, report);
  const read = <T>(key: (typeof FRONT_MATTER_KEYS)[number], how: (entry: YamlEntry) => T) => {
    const entry = known.get(key);
    return entry && how(entry);
  };
  const title = read("title", (entry) => values.text(entry));
  const language = read("language", (entry) => values.language(entry));
  return {
    keys: new Map([...known].map(([name, entry]) => [name, entry.nameSpan])),
    ...(title && { title }),
    ...(language && { language }),
    parts: read("parts", (entry) => values.parts(entry)) ?? [],
    pages: read("pages", (entry) => values.texts(entry)) ?? [],
    supply: read("supply", (entry) => values.entries(entry)) ?? [],
    figures: read("figures", (entry) => values.entries(entry)) ?? [],
    heights: read("heights", (entry) => values.lengths(entry)) ?? [],
    offBoard: read("off-board", (entry) => values.texts(entry)) ?? [],
    clearance: read("clearance", (entry) => values.clearance(entry)) ?? [],
    tools: read("tools", (entry) => values.phrases(entry)) ?? [],
    spares: read("spares", (entry) => values.counts(entry)) ?? [],
    columns: read("columns", (entry) => values.entries(entry)) ?? [],
    checks: read("checks", (entry) => values.severities(entry)) ?? [],
    limits: read("checks", (entry) => values.limits(entry)) ?? [],
    derating: read("derating", (entry) => values.shares(entry, RATED)) ?? [],
  };
}

function topEntries(
  text: string,
  { body }: Fences,
  problems: FrontMatterProblem[],
): readonly YamlEntry[] {
  if (body.end - body.start > MAX_LENGTH) {
    const message = `The front matter is longer than ${MAX_LENGTH.toLocaleString("en")} characters, so only \`parts\` is read. Move what is not needed out of it.`;
    problems.push({ span: firstLine(text, body), message });
    return [];
  }
  const root = readYaml(text, body, (problem) => problems.push(problem));
  if (root.kind === "map") {
    const broken = new Set(problems.map(({ span }) => lineStart(text, span.start)));
    for (const entry of root.entries) {
      if (broken.has(lineStart(text, entry.nameSpan.start))) continue;
      const problem = unknownKey(entry);
      if (problem) problems.push(problem);
    }
    return root.entries;
  }
  if (problems.length === 0 && root.kind !== "nothing") {
    const message =
      "The front matter needs keys with values, such as `parts: list.csv`, one on each line.";
    problems.push({ span: firstLine(text, body), message });
  }
  return [];
}

function unknownKey({ name, nameSpan }: YamlEntry): FrontMatterProblem | undefined {
  if ((FRONT_MATTER_KEYS as readonly string[]).includes(name)) return undefined;
  const meant = nearestWord(name, FRONT_MATTER_KEYS);
  if (!meant) {
    const message = `\`${name}\` is no key of a guide and has no effect. Known keys: ${FRONT_MATTER_KEYS.join(", ")}.`;
    return { span: nameSpan, message };
  }
  return {
    span: nameSpan,
    message: `\`${name}\` is no key of a guide and has no effect. Did you mean \`${meant}\`?`,
    suggestion: { title: `Write ${meant}`, span: nameSpan, text: meant },
  };
}

/**
 * The line of the key `parts`, found without YAML: so a guide stays a guide, and keeps its list,
 * while another line of its front matter is half written.
 */
function findPartsLine(text: string, { body }: Fences): YamlEntry | undefined {
  PARTS_LINE.lastIndex = body.start;
  const match = PARTS_LINE.exec(text.slice(0, body.end));
  if (!match) return undefined;
  const start = match.index + match[1]!.length;
  const nameSpan = { start, end: start + "parts".length };
  const rest = match[2] ?? "";
  const path = /^(["'])(.*?)\1/.exec(rest)?.[2] ?? rest.replace(/[ \t]#.*$/, "").trimEnd();
  const valueStart = match.index + match[0].length - rest.length + rest.indexOf(path);
  const span = { start: valueStart, end: valueStart + path.length };
  const value = /^[\p{L}\p{N}._/]/u.test(path)
    ? ({ kind: "text", text: path, span, plain: true } as const)
    : ({ kind: "nothing", span, reported: true } as const);
  return { name: "parts", nameSpan, value, plain: true };
}

function unclosed(text: string, { span: { end } }: Fences): FrontMatterProblem {
  const lineBreak = /\r\n|\n|\r/.exec(text)![0];
  const before = /[\r\n]/.test(text[end - 1]!) ? "" : lineBreak;
  return {
    span: { start: 0, end: 3 },
    message:
      "The front matter opens here and is never closed. Write a line of `---` below its last key.",
    suggestion: {
      title: "Close the front matter",
      span: { start: end, end },
      text: `${before}---${lineBreak}`,
    },
  };
}

function overlaps(a: Span, b: Span): boolean {
  return a.start < b.end && b.start < a.end;
}

function firstLine(text: string, body: Span): Span {
  const length = text.slice(body.start, body.end).search(/[\r\n]/);
  return { start: body.start, end: length < 0 ? body.end : body.start + length };
}

function lineStart(text: string, offset: number): number {
  return Math.max(text.lastIndexOf("\n", offset - 1), text.lastIndexOf("\r", offset - 1)) + 1;
}
