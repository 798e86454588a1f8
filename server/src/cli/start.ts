/** `kitquill start`: writes the beginning of a guide from its parts lists. */
import { writeFile } from "node:fs/promises";
import { basename, dirname, extname, relative, resolve, sep } from "node:path";
import { startGuide } from "../features/start/skeleton.ts";
import { LANGUAGES } from "../text/language.ts";
import { splitSheet } from "../workspace/paths.ts";
import { choice, readArguments, UsageError } from "./arguments.ts";
import { readList } from "./readList.ts";
import type { ExitCode } from "./run.ts";
import type { Terminal } from "./terminal.ts";

const OPTIONS = { out: "string", title: "string", language: "string", help: "boolean" } as const;

export async function start(
  argv: readonly string[],
  terminal: Terminal,
  cwd: string,
): Promise<ExitCode> {
  const args = readArguments(argv, OPTIONS);
  if (args.positionals.length === 0) {
    throw new UsageError("`start` needs the name of a parts list.");
  }
  const named = args.positionals.map(boardAndName);
  if (named.length > 1 && named.some(({ board }) => board === undefined)) {
    throw new UsageError(
      "Several lists need the board of each: `start main=main.csv psu=psu.csv`.",
    );
  }
  const out = args.value("out");
  const folder = out === undefined ? cwd : dirname(resolve(cwd, out));
  const lists = [];
  for (const { board, name } of named) {
    const list = await readList(name, cwd, terminal);
    lists.push({ board, list, path: relative(folder, resolve(cwd, name)).split(sep).join("/") });
  }
  const text = startGuide({
    title: args.value("title") ?? titleOf(out ?? named[0]!.name),
    language: choice(args, "language", [...LANGUAGES]),
    lists,
  });
  if (out === undefined) terminal.out(text);
  else {
    await writeNew(resolve(cwd, out), out, text);
    terminal.out(
      `\`${out}\` is written. Word its steps; \`kitquill check ${out}\` tells what is still open.\n`,
    );
  }
  return 0;
}

/** `relay=relay.csv` is the list of the board relay. */
function boardAndName(argument: string): { board: string | undefined; name: string } {
  const sign = argument.indexOf("=");
  if (sign < 1) return { board: undefined, name: argument };
  return { board: argument.slice(0, sign), name: argument.slice(sign + 1) };
}

/** `heron-parts.csv` lists the parts of Heron. */
function titleOf(name: string): string {
  const { path } = splitSheet(name);
  const stem = basename(path, extname(path)).replace(/[-_ ]?(?:parts?|bom|list)$/i, "");
  const words = (stem || "New kit").replace(/[-_]+/g, " ");
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** A guide that exists is never overwritten. */
async function writeNew(path: string, name: string, text: string): Promise<void> {
  try {
    await writeFile(path, text, { flag: "wx" });
  } catch (error) {
    if (!(error instanceof Error && "code" in error)) throw error;
    throw new UsageError(
      error.code === "EEXIST"
        ? `\`${name}\` exists already and is left as it is. Name another file.`
        : `\`${name}\` cannot be written: ${error.message}.`,
    );
  }
}
