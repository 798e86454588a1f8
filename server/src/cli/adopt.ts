/** `kitquill adopt`: marks the parts that a plain Markdown guide names in the steps that fit them. */
import { existsSync } from "node:fs";
import { dirname, relative, resolve, sep } from "node:path";
import { URI } from "vscode-uri";
import { listNames } from "../checks/words.ts";
import {
  type Adoption,
  adopt as adoptGuide,
  type Left,
  type Proposal,
} from "../features/adopt/adopt.ts";
import { DEFAULT_SETTINGS, Service } from "../service.ts";
import { readFrontMatter } from "../syntax/frontMatterReader.ts";
import { quoteYaml } from "../syntax/yaml/tree.ts";
import { LineIndex } from "../text/lines.ts";
import { applyEdits } from "../text/span.ts";
import type { Files } from "../workspace/files.ts";
import { splitSheet } from "../workspace/paths.ts";
import { type Arguments, onlyFile, readArguments, UsageError } from "./arguments.ts";
import { encodeLike } from "./encode.ts";
import { diskFor, reachOf } from "./inputs.ts";
import { bytesOf, decodedText } from "./namedFile.ts";
import { noFile } from "./noFile.ts";
import type { ExitCode } from "./run.ts";
import { shownPath } from "./shownPath.ts";
import type { Terminal } from "./terminal.ts";
import { replaceFile } from "./write.ts";

interface Spot {
  readonly uri: string;
  readonly span: { readonly start: number };
}

const OPTIONS = {
  parts: "string",
  write: "boolean",
  "lists-outside": "boolean",
  help: "boolean",
} as const;

export async function adopt(
  argv: readonly string[],
  terminal: Terminal,
  cwd: string,
): Promise<ExitCode> {
  const args = readArguments(argv, OPTIONS);
  const name = onlyFile(args, "adopt", "the name of a Markdown file");
  if (/\.(?:csv|tsv|xlsx|xlsm|ods)$/i.test(name)) {
    throw new UsageError(
      `\`${name}\` is no Markdown file. Name the guide, and its parts list with \`--parts\`.`,
    );
  }
  const path = resolve(cwd, name);
  const uri = URI.file(path).toString();
  const outside = args.has("lists-outside");
  const disk = diskFor({ uri, folder: reachOf(uri, cwd) }, outside);
  const before = await bytesOf(name, cwd, disk);
  const decoded = decodedText(before, name);
  const text = withParts(decoded.text, args, path, cwd);
  await refuseLost(args.value("parts"), cwd);
  const adoption = await adopted(uri, text, disk, outside, cwd);
  terminal.out(report(adoption, text, decoded.text, uri, cwd, args.has("write")));
  if (!args.has("write")) return 0;
  const edits = adoption.proposals.filter((one) => one.uri === uri).flatMap((one) => one.edits);
  const after = encodeLike(applyEdits(text, edits), decoded.encoding, before);
  if (!after)
    throw new UsageError(`\`${name}\` cannot hold the marks in its encoding. Save it as UTF-8.`);
  await replaceFile(path, before, after);
  return 0;
}

/** Tells of a list that is not there as the user wrote it, not as the guide would name it. */
async function refuseLost(list: string | undefined, cwd: string): Promise<void> {
  if (list === undefined) return;
  const { path } = splitSheet(list);
  if (!existsSync(resolve(cwd, path))) throw new UsageError(await noFile(path, cwd));
}

/** The text with the key `parts` in its front matter, as it has it or as `--parts` says. */
function withParts(text: string, args: Arguments, path: string, cwd: string): string {
  const known = readFrontMatter(text);
  const list = args.value("parts");
  if (known?.keys.has("parts")) {
    if (list === undefined) return text;
    throw new UsageError("The guide names its parts list already; leave `--parts` out.");
  }
  if (list === undefined) {
    throw new UsageError("Nothing says which parts list is meant. Give it with `--parts LIST`.");
  }
  const named = relative(dirname(path), resolve(cwd, list)).split(sep).join("/");
  const end = /\r\n|\n|\r/.exec(text)?.[0] ?? "\n";
  const line = `parts: ${quoteYaml(named)}${end}`;
  if (!known) return `---${end}${line}---${end}${end}${text}`;
  const at = text.indexOf(end) + end.length;
  return text.slice(0, at) + line + text.slice(at);
}

async function adopted(
  uri: string,
  text: string,
  disk: Files,
  outside: boolean,
  cwd: string,
): Promise<Adoption> {
  const files: Files = {
    read: async (wanted) => (wanted === uri ? new TextEncoder().encode(text) : disk.read(wanted)),
    exists: (wanted) => disk.exists(wanted),
    list: (folder) => disk.list(folder),
  };
  const folders = [reachOf(uri, cwd)];
  const service = new Service(files, {
    ...DEFAULT_SETTINGS,
    folders,
    listsOutsideWorkspace: outside,
  });
  service.follow(uri);
  await service.settle();
  const guide = service.guidesOf(uri)[0];
  const unread = service
    .takeChanges()
    .flatMap(({ diagnoses }) => diagnoses)
    .find(({ code, severity }) => code === "unreadable-list" && severity === "error");
  if (unread || !guide) throw new UsageError(unread?.message ?? "The guide cannot be read.");
  return adoptGuide(guide);
}

function report(
  { proposals, left }: Adoption,
  text: string,
  original: string,
  uri: string,
  cwd: string,
  written: boolean,
): string {
  if (proposals.length + left.length === 0) return "Every part of the list is marked already.\n";
  const lines = new LineIndex(text);
  const shift = text.split(/\r\n|\n|\r/).length - original.split(/\r\n|\n|\r/).length;
  const place = (spot: Spot) =>
    `${shownPath(spot.uri, cwd)}:${lines.positionAt(spot.span.start).line + 1 - (written || spot.uri !== uri ? 0 : shift)}`;
  const made = proposals.map((one: Proposal) => `${place(one)}  ${one.mark}  (${one.form})\n`);
  const waiting = new Set(left.map(({ part }) => part));
  const parts = new Set(proposals.flatMap((one) => one.parts));
  const marked = [...parts].filter((part) => !waiting.has(part)).length;
  const rest = leftLines(left, place);
  const summary = `${marked} of ${marked + left.length} parts ${written ? "are marked" : "would be marked"}, ${left.length} ${left.length === 1 ? "is" : "are"} left to you.`;
  const how = written ? "" : " Nothing is written yet: --write writes the marks.";
  const rests = rest.length > 0 ? `\nLeft to you:\n${rest.join("")}` : "";
  return `${made.join("")}${rests}\n${summary}${how}\n`;
}

/** A line for each place that names parts which are left, and one for those that none names. */
function leftLines(left: readonly Left[], place: (spot: Spot) => string): string[] {
  const named = new Map<string, Left[]>();
  for (const one of left) {
    if (!one.named) continue;
    const where = place(one.named);
    named.set(where, [...(named.get(where) ?? []), one]);
  }
  const unnamed = left.filter((one) => !one.named);
  const lines = [...named].map(([where, those]) => {
    const pronoun = those.length === 1 ? "it" : "them";
    const what = those[0]!.isPlaced
      ? `placed at ${where}; a later step must solder ${pronoun}`
      : `named at ${where}`;
    return `  ${partNames(those)}  ${what}\n`;
  });
  if (unnamed.length > 0) lines.push(`  ${partNames(unnamed)}  not named in the guide\n`);
  return lines;
}

function partNames(left: readonly Left[]): string {
  return listNames(
    left.map(({ part }) => part),
    1000,
  );
}
