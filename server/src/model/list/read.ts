/** Reads a parts list, whatever it is written in, as the analysis sees it. The entry to this folder. */
import { readCsv } from "../../syntax/csv.ts";
import { findDelimiter } from "../../syntax/delimiter.ts";
import { readTables } from "../../syntax/listTables.ts";
import type { TableRow } from "../../syntax/tableRow.ts";
import { decodeText, MAX_TEXT_BYTES } from "../../text/decode.ts";
import type { Span } from "../../text/span.ts";
import { type Columns, chooseColumns, type Overrides } from "./columns.ts";
import { foldHeader } from "./headerWords.ts";
import { LineReader } from "./lines.ts";
import type { ListProblem, OverrideProblem, PartsList } from "./partsList.ts";
import { dropRepeatedList, findRepeats } from "./repeats.ts";
import { findSections, HeaderLookup, type Section, sectionsBelow } from "./sections.ts";
import { isRuled, markupKind, plainKind } from "./textKind.ts";

/** Rows and cells beyond these numbers are not read (a problem says so), so that memory is bounded. */
const LIMITS = { maxRows: 200_000, maxCells: 2_000_000 };
/** Markdown of more characters is not searched for tables: its parser takes a second for 100,000. */
const MAX_MARKDOWN = 200_000;

export interface ReadOptions {
  /** Column names, letters or numbers by meaning, from the guide's front matter. */
  readonly columns?: Overrides;
}

/**
 * The parts list in a CSV, TSV or Markdown file. Whatever cannot be read becomes a problem at its
 * place; a file that is no parts list gives exactly one, which names its kind. Never throws.
 */
export function readPartsList(
  uri: string,
  source: Uint8Array | string,
  options: ReadOptions = {},
): PartsList {
  if (typeof source !== "string") {
    const decoded = decodeText(source);
    if (!("text" in decoded)) {
      const message = `${decoded.problem} ${ADVICE}`;
      return unreadable(uri, "", "utf-8", message);
    }
    return readText(uri, decoded.text, decoded.encoding, options);
  }
  if (source.length > MAX_TEXT_BYTES) {
    return unreadable(
      uri,
      "",
      "utf-8",
      `The text is longer than ${MAX_TEXT_BYTES / 2 ** 20} MB, so it is not read. Check that it is the right file.`,
    );
  }
  return readText(uri, source, "utf-8", options);
}

const ADVICE = "Save the parts list as CSV, or write it as a table in a Markdown file.";

function readText(uri: string, text: string, encoding: string, options: ReadOptions): PartsList {
  if (text.trim() === "") {
    return unreadable(
      uri,
      text,
      encoding,
      `The parts list is empty. Write its header and a line for each kind of part.`,
    );
  }
  const markup = markupKind(text);
  if (markup) return unreadable(uri, text, encoding, `This is ${markup}, no parts list. ${ADVICE}`);
  return isMarkdown(uri, text)
    ? readMarkdown(uri, text, encoding, options)
    : readDelimited(uri, text, encoding, options);
}

/** By the file's name, or by the ruled line below a table's header. */
function isMarkdown(uri: string, text: string): boolean {
  if (/\.(?:md|markdown|mdown|mkd)$/i.test(uri.replace(/[?#].*$/, ""))) return true;
  return /^[ \t]*\|[ \t]*:?-+:?[ \t]*(?:\|[ \t]*:?-+:?[ \t]*)*\|?[ \t]*$/m.test(
    text.slice(0, 50_000),
  );
}

function readMarkdown(
  uri: string,
  text: string,
  encoding: string,
  options: ReadOptions,
): PartsList {
  if (text.length > MAX_MARKDOWN) {
    return unreadable(
      uri,
      text,
      encoding,
      `This Markdown file is too long to be searched for tables (more than ${MAX_MARKDOWN} characters). Put the parts list into a file of its own, best as CSV.`,
    );
  }
  const lookup = new HeaderLookup(Object.values(options.columns ?? {}));
  const sections = readTables(text).flatMap((rows) => sectionsBelow(rows, lookup));
  const list = readSections(uri, text, encoding, "markdown", sections, lookup, options);
  const header = headerWithoutLines(list, sections, lookup);
  if (header) return unreadable(uri, text, encoding, NO_LINES, header.span);
  return (
    list ??
    unreadable(
      uri,
      text,
      encoding,
      `No table of this Markdown file has a column of designators, so it holds no parts list. Give one of its tables a column with designators such as R1, C2–C5.`,
    )
  );
}

const NO_LINES =
  "This header has no lines of parts below it, so every part of the guide would be unknown. Write a line for each kind of part.";

/** The header of a list that has nothing else yet. */
function headerWithoutLines(
  list: PartsList | undefined,
  sections: readonly Section[],
  lookup: HeaderLookup,
): TableRow | undefined {
  if (list)
    return list.lines.length === 0 ? sections.find(({ header }) => header)?.header : undefined;
  if (sections.some(({ rows }) => rows.some(isFilled))) return undefined;
  return sections.find(({ header }) => header && namesDesignators(header, lookup))?.header;
}

function isFilled(row: TableRow): boolean {
  return cellTexts(row).some((text) => text !== "");
}

function namesDesignators(header: TableRow, lookup: HeaderLookup): boolean {
  return cellTexts(header).some((text) => lookup.of(text)?.ranks.has("designator"));
}

function cellTexts(row: TableRow): string[] {
  return Array.from({ length: row.width }, (_, column) => row.cell(column)!.text);
}

function readDelimited(
  uri: string,
  text: string,
  encoding: string,
  options: ReadOptions,
): PartsList {
  const delimiter = findDelimiter(text);
  const table = readCsv(text, delimiter ?? ",", LIMITS);
  const lookup = new HeaderLookup(Object.values(options.columns ?? {}));
  const sections = findSections(table.rows, lookup);
  // Without a delimiter only bare designators are a list; columns of blanks cannot be told apart.
  const list =
    delimiter === undefined && isRuled(text)
      ? undefined
      : readSections(uri, text, encoding, "csv", sections, lookup, options);
  const header = headerWithoutLines(list, sections, lookup);
  if (header) return unreadable(uri, text, encoding, NO_LINES, header.span);
  if (!list) {
    const message =
      delimiter !== undefined && sections.some(({ header }) => header)
        ? `No column of this table holds designators, so it is no parts list. Add a column with designators such as R1, C2–C5.`
        : `This is ${plainKind(text)}, in which no parts can be told for certain. ${ADVICE}`;
    return unreadable(uri, text, encoding, message);
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

const UNCLOSED =
  "This quote is never closed, so the cells behind it may be read wrongly. Close the quote, or delete it.";
const CUT = `The list goes on, but only ${LIMITS.maxRows} rows and ${LIMITS.maxCells} cells are read. Check that it is the right file.`;

/** The lines of all sections; undefined where none of them is a parts list. */
function readSections(
  uri: string,
  text: string,
  encoding: string,
  format: "csv" | "markdown",
  sections: readonly Section[],
  lookup: HeaderLookup,
  { columns: overrides = {} }: ReadOptions,
): PartsList | undefined {
  const columnsOf = columnsBySection(sections, lookup, overrides);
  const found = [...new Set(columnsOf.values())];
  if (!found.some(({ isPartsList }) => isPartsList)) {
    // Screws alone make a list, too, but not any table of a Markdown file.
    if (format === "markdown" || !found.some(({ isHardwareList }) => isHardwareList))
      return undefined;
  }
  const reader = new LineReader(text);
  const used = new Set<Columns>();
  for (const section of sections) {
    const columns = columnsOf.get(section)!;
    if (!columns.isPartsList && !columns.isHardwareList) continue;
    used.add(columns);
    reader.readAll(section.rows, columns);
  }
  const { lines, problem } = dropRepeatedList(reader.lines);
  const kept = problem
    ? reader.problems.filter(({ span }) => span.start < problem.span.start)
    : reader.problems;
  return {
    uri,
    text,
    format,
    encoding,
    columns: [...used].flatMap(({ choices }) => choices),
    lines,
    problems: [...kept, ...(problem ? [problem] : []), ...findRepeats(lines, reader.rowOf)],
    overrideProblems: overrideProblems([...used], overrides),
  };
}

/** Sections under the same header are looked at together: a short one tells little. */
function columnsBySection(
  sections: readonly Section[],
  lookup: HeaderLookup,
  overrides: Overrides,
): ReadonlyMap<Section, Columns> {
  const groups = new Map<string, Section[]>();
  for (const section of sections) {
    const key = headerKey(section.header);
    const group = groups.get(key);
    if (group) group.push(section);
    else groups.set(key, [section]);
  }
  const found = new Map<Section, Columns>();
  for (const group of groups.values()) {
    const rows = group.flatMap((section) => section.rows);
    const columns = chooseColumns(group[0]!.header, rows, lookup, overrides);
    for (const section of group) found.set(section, columns);
  }
  return found;
}

function headerKey(header: TableRow | undefined): string {
  if (!header) return "";
  const names: string[] = [];
  for (let i = 0; i < header.width; i++) names.push(foldHeader(header.cell(i)!.text).name);
  return names.join("\n");
}

/** Names of the guide that no header of the list has. */
function overrideProblems(found: readonly Columns[], overrides: Overrides): OverrideProblem[] {
  const [first, ...rest] = found;
  if (!first) return [];
  const unmatched = first.unmatched.filter((meaning) =>
    rest.every((columns) => columns.unmatched.includes(meaning)),
  );
  const headers = found.flatMap(({ choices }) => choices.map(({ header }) => header));
  const candidates = [...new Set(headers)].filter((header) => header !== "");
  return unmatched.map((meaning) => ({ meaning, name: overrides[meaning]!, candidates }));
}

/** A list of which nothing is read; unless told otherwise the finding stands at its first line. */
function unreadable(
  uri: string,
  text: string,
  encoding: string,
  message: string,
  span = firstLine(text),
): PartsList {
  const problem: ListProblem = { code: "unreadable-list", span, message };
  return {
    uri,
    text,
    format: "unreadable",
    encoding,
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
