/** Parts lists in text: cells parted by a delimiter, or one designator a line. */
import { readCsv } from "../../syntax/csv.ts";
import { findDelimiter } from "../../syntax/delimiter.ts";
import type { Overrides } from "./columns.ts";
import type { ListProblem, PartsList } from "./partsList.ts";
import { headerWithoutLines, readSections } from "./readSections.ts";
import { findSections, HeaderLookup } from "./sections.ts";
import { isRuled, plainKind } from "./textKind.ts";
import { ADVICE, type ListText, NO_LINES, unreadable } from "./unreadable.ts";

/** Rows and cells beyond these numbers are not read (a problem says so), so that memory is bounded. */
const LIMITS = { maxRows: 200_000, maxCells: 2_000_000 };

export function readDelimited(file: ListText, overrides: Overrides): PartsList {
  const { text } = file;
  const delimiter = findDelimiter(text);
  const table = readCsv(text, delimiter ?? ",", LIMITS);
  const lookup = new HeaderLookup(Object.values(overrides));
  const sections = findSections(table.rows, lookup);
  // Without a delimiter only bare designators are a list; columns of blanks cannot be told apart.
  const list =
    delimiter === undefined && isRuled(text)
      ? undefined
      : readSections({ ...file, format: "csv" }, sections, lookup, overrides);
  const header = headerWithoutLines(list, sections, lookup);
  if (header) return unreadable(file, NO_LINES, header.span);
  if (!list) {
    const isTable = delimiter !== undefined && sections.some(({ header }) => header);
    return unreadable(file, isTable ? NO_DESIGNATORS : noTable(text));
  }
  const problems: ListProblem[] = [];
  if (table.unclosed !== undefined) {
    const span = { start: table.unclosed, end: table.unclosed + 1 };
    problems.push({ code: "unreadable-list", span, message: UNCLOSED });
  }
  if (table.cut) {
    const span = table.rows.at(-1)!.span;
    problems.push({ code: "unreadable-list", span, message: CUT });
  }
  return { ...list, problems: [...problems, ...list.problems] };
}

const NO_DESIGNATORS =
  "No column of this table holds designators, so it is no parts list. Add a column with designators such as R1, C2–C5.";
const UNCLOSED =
  "This quote is never closed, so the cells after it may be read wrongly. Close the quote, or delete it.";
const CUT = `The list goes on, but only ${LIMITS.maxRows} rows and ${LIMITS.maxCells} cells are read. Check that it is the right file.`;

function noTable(text: string): string {
  return `This is ${plainKind(text)}, in which no parts can be told for certain. ${ADVICE}`;
}
