/** `kitquill start`: writes the beginning of a guide from its parts lists. */
import { writeFile } from "node:fs/promises";
import { dirname, relative, resolve, sep } from "node:path";
import { kitName, NAMELESS, namesOnPath } from "../features/start/kitName.ts";
import { startGuide } from "../features/start/skeleton.ts";
import { LANGUAGES } from "../text/language.ts";
import { splitSheet } from "../workspace/paths.ts";
import { choice, readArguments, UsageError } from "./arguments.ts";
import { asArgument } from "./asArgument.ts";
import { readList } from "./readList.ts";
import { refusal } from "./refusal.ts";
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
  const wanted = args.value("title");
  const title = wanted ?? titleOf([...(out ? [out] : []), named[0]!.name], cwd);
  const text = startGuide({
    title,
    language: choice(args, "language", [...LANGUAGES]),
    lists,
  });
  if (out === undefined) terminal.out(text);
  else {
    await writeNew(resolve(cwd, out), out, text);
    terminal.out(
      `\`${out}\` is written.${wanted === undefined ? guessed(title) : ""} Word its steps; \`kitquill check ${asArgument(out)}\` tells what is still open.\n`,
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

function guessed(title: string): string {
  return ` Its title, \`${title}\`, is a guess: change it at the top of the file, or give one with \`--title\`.`;
}

/** What the names of the files tell of the kit: those of all files first, then those of their folders. */
function titleOf(names: readonly string[], cwd: string): string {
  const paths = names.map((name) => {
    const path = resolve(cwd, splitSheet(name).path).split(sep).join("/");
    return namesOnPath(path);
  });
  const files = paths.flatMap(([file]) => file ?? []);
  return kitName([...files, ...paths.flatMap(([, ...folders]) => folders)]) ?? NAMELESS;
}

/** A guide that exists is never overwritten. */
async function writeNew(path: string, name: string, text: string): Promise<void> {
  try {
    await writeFile(path, text, { flag: "wx" });
  } catch (error) {
    const why = refusal(error);
    if (why === undefined) throw error;
    const isThere = (error as NodeJS.ErrnoException).code === "EEXIST";
    throw new UsageError(
      isThere
        ? `\`${name}\` exists already and is left as it is. Name another file.`
        : `\`${name}\` cannot be written: ${why}.`,
    );
  }
}
