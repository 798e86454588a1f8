/** Reads a parts list by itself, without a guide. */
import { resolve } from "node:path";
import { URI } from "vscode-uri";
import { loadPartsList } from "../model/list/load.ts";
import type { ListProblem, PartsList } from "../model/list/partsList.ts";
import { tell } from "../model/list/tellSheet.ts";
import { readFrontMatter } from "../syntax/frontMatterReader.ts";
import { decodeText } from "../text/decode.ts";
import { LineIndex } from "../text/lines.ts";
import { sheetUri, splitSheet } from "../workspace/paths.ts";
import type { ListContent } from "../workspace/revisedSources.ts";
import { UsageError } from "./arguments.ts";
import { bytesOf } from "./namedFile.ts";
import type { Terminal } from "./terminal.ts";

/** Of a list that is no list after all there may be 200,000 problems. */
const MOST_TOLD = 50;

/** A list and the file it was read from. */
export interface NamedList {
  /** As the user wrote it. */
  readonly name: string;
  readonly list: PartsList;
  readonly content: ListContent;
}

/**
 * The list in the file (or sheet of a workbook, `kit.xlsx#Main board`), what could not be read in it
 * told on the terminal. Throws a UsageError for no list.
 */
export async function readList(name: string, cwd: string, terminal: Terminal): Promise<PartsList> {
  return (await readNamedList(name, cwd, terminal)).list;
}

/** `bytesAt`: where the file's bytes come from, else from the disk. */
export async function readNamedList(
  name: string,
  cwd: string,
  terminal: Terminal,
  bytesAt?: (path: string) => Promise<Uint8Array>,
): Promise<NamedList> {
  const { path, sheet } = splitSheet(name);
  const uri = URI.file(resolve(cwd, path)).toString();
  const content = bytesAt ? await bytesAt(resolve(cwd, path)) : await bytesOf(path, cwd);
  const meant = sheet === undefined ? {} : { sheet };
  const list = await loadPartsList(sheetUri(uri, sheet), content, meant);
  if (list.format === "unreadable") {
    const named = listsNamedIn(content);
    if (named) throw new UsageError(`\`${name}\` is a guide. Name its parts list: ${named}.`);
    const why = list.problems[0]?.message ?? "It cannot be read.";
    throw new UsageError(`\`${name}\` cannot be used as a parts list. ${why}`);
  }
  // Lists have many lines and mostly no problem.
  if (list.problems.length > 0) tellProblems(list, path, terminal);
  return { name, list, content: { content, ...meant } };
}

/** The lists of the guide that the bytes hold, as it names them; undefined for no guide. */
function listsNamedIn(content: Uint8Array): string | undefined {
  const decoded = decodeText(content);
  const notes = "text" in decoded ? readFrontMatter(decoded.text) : undefined;
  const lists = notes?.parts.map(({ path }) => `\`${path.value}\``) ?? [];
  return lists.length > 0 ? lists.join(", ") : undefined;
}

function tellProblems(list: PartsList, name: string, terminal: Terminal): void {
  const lines = new LineIndex(list.text);
  const { problems } = list;
  for (const problem of problems.slice(0, MOST_TOLD)) {
    terminal.err(`${told(problem, list, lines, name)}\n`);
  }
  const more = problems.length - MOST_TOLD;
  if (more > 0) terminal.err(`${name}: ${more} more; put these right first.\n`);
}

function told(
  { code, span, message }: ListProblem,
  list: PartsList,
  lines: LineIndex,
  name: string,
): string {
  if (list.places) return `${name} ${code} ${tell(list.places, span, message)}`;
  const { line, column } = lines.positionAt(span.start);
  return `${name}:${line + 1}:${column + 1} ${code} ${message}`;
}
