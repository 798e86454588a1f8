/** `kitquill list`: what a guide or a parts list holds, as a table. */
import { resolve } from "node:path";
import { URI } from "vscode-uri";
import { nearestWord } from "../text/nearest.ts";
import { choice, readArguments, UsageError } from "./arguments.ts";
import { type Input, noGuide, reachOf } from "./inputs.ts";
import { columnsOfList } from "./listColumns.ts";
import { figuresOfGuide } from "./listFigures.ts";
import { hazardsOfGuide } from "./listHazards.ts";
import { partsOfGuide, partsOfList } from "./listParts.ts";
import { stepsOfGuide } from "./listSteps.ts";
import { toolsOfGuide } from "./listTools.ts";
import { oneGuide } from "./oneGuide.ts";
import { readList } from "./readList.ts";
import type { ExitCode } from "./run.ts";
import type { TableFormat } from "./table.ts";
import type { Terminal } from "./terminal.ts";

const OPTIONS = { format: "string", "lists-outside": "boolean", help: "boolean" } as const;
const SUBJECTS = ["steps", "parts", "tools", "figures", "hazards", "columns"];

/** What is listed of which file, and how. */
interface Request {
  readonly name: string;
  readonly input: Input;
  readonly format: TableFormat;
  readonly listsOutside: boolean;
  readonly cwd: string;
  readonly terminal: Terminal;
}

export async function list(
  argv: readonly string[],
  terminal: Terminal,
  cwd: string,
): Promise<ExitCode> {
  const args = readArguments(argv, OPTIONS);
  const [subject, name, more] = args.positionals;
  if (subject === undefined || !SUBJECTS.includes(subject)) throw noSubject(subject);
  if (name === undefined) throw new UsageError(`\`list ${subject}\` needs the name of a file.`);
  if (more !== undefined) throw new UsageError(`\`list\` takes one file; \`${more}\` is too many.`);
  const uri = URI.file(resolve(cwd, name)).toString();
  const request: Request = {
    name,
    input: { uri, folder: reachOf(uri, cwd) },
    format: choice(args, "format", ["text", "csv", "json"]),
    listsOutside: args.has("lists-outside"),
    cwd,
    terminal,
  };
  terminal.out(await listed(subject, request));
  return 0;
}

async function listed(subject: string, request: Request): Promise<string> {
  const { name, input, format, cwd, terminal } = request;
  if (subject === "steps") return stepsOfGuide(await guideOf(request), format, cwd, terminal);
  if (subject === "tools") return toolsOfGuide(await guideOf(request), format, terminal);
  if (subject === "figures") return figuresOfGuide(await guideOf(request), format, cwd, terminal);
  if (subject === "hazards") {
    const { guide, diagnoses } = await checkedGuide(request);
    return hazardsOfGuide(guide, diagnoses, format, cwd, terminal);
  }
  const aboutGuide = subject === "parts" && (await noGuide(input, name)) === undefined;
  if (aboutGuide) return partsOfGuide(await guideOf(request), format, cwd, terminal);
  const partsList = await readList(name, cwd, terminal);
  return subject === "parts"
    ? partsOfList(partsList, format, terminal)
    : columnsOfList(partsList, format, terminal);
}

async function guideOf(request: Request) {
  return (await checkedGuide(request)).guide;
}

async function checkedGuide({ name, cwd, listsOutside, terminal }: Request) {
  const { checked } = await oneGuide(name, cwd, listsOutside);
  for (const { code, message } of checked.diagnoses) {
    if (code === "unreadable-list") terminal.err(`kitquill: ${message}\n`);
  }
  return checked;
}

function noSubject(word: string | undefined): UsageError {
  const all = `It lists ${SUBJECTS.join(", ")}.`;
  if (word === undefined) return new UsageError(`\`list\` needs to know what to list. ${all}`);
  const meant = nearestWord(word, SUBJECTS);
  return new UsageError(
    `\`list\` cannot list \`${word}\`. ${meant ? `Did you mean \`${meant}\`?` : all}`,
  );
}
