/** Lists of which nothing is read, and the words that say why. */
import type { Span } from "../../text/span.ts";
import type { ListProblem, PartsList } from "./partsList.ts";

export const ADVICE =
  "Save the parts list as CSV, .xlsx or .ods, or write it as a table in a Markdown file.";

export const NO_LINES =
  "This header has no lines of parts below it, so every part of the guide would be unknown. Write a line for each kind of part.";

/** A file as decoded. */
export type ListText = Pick<PartsList, "uri" | "text" | "encoding">;

/** A list of which nothing is read; unless told otherwise the finding stands at its first line. */
export function unreadable(
  file: ListText,
  message: string,
  span = firstLine(file.text),
): PartsList {
  const problem: ListProblem = { code: "unreadable-list", span, message };
  return {
    ...file,
    format: "unreadable",
    columns: [],
    lines: [],
    problems: [problem],
    overrideProblems: [],
  };
}

function firstLine(text: string): Span {
  const start = text.length - text.trimStart().length;
  const rest = text.slice(start, start + 200);
  const end = rest.search(/[\r\n]/);
  return { start, end: start + (end < 0 ? rest.length : end) };
}
