/** Parts lists in the tables of a Markdown file. */
import { readMarkdownTables } from "../../syntax/listTables.ts";
import type { Overrides } from "./columns.ts";
import type { PartsList } from "./partsList.ts";
import { headerWithoutLines, readSections } from "./readSections.ts";
import { HeaderLookup, sectionsBelow } from "./sections.ts";
import { type ListText, NO_LINES, unreadable } from "./unreadable.ts";

/** Markdown of more characters is not searched for tables: its parser takes a second for 100,000. */
const MAX_MARKDOWN = 200_000;

/** By the file's name, or by the ruled line below a table's header. */
export function isMarkdown(uri: string, text: string): boolean {
  if (/\.(?:md|markdown|mdown|mkd)$/i.test(uri.replace(/[?#].*$/, ""))) return true;
  return /^[ \t]*\|[ \t]*:?-+:?[ \t]*(?:\|[ \t]*:?-+:?[ \t]*)*\|?[ \t]*$/m.test(
    text.slice(0, 50_000),
  );
}

export function readMarkdown(file: ListText, overrides: Overrides): PartsList {
  if (file.text.length > MAX_MARKDOWN) return unreadable(file, TOO_LONG);
  const lookup = new HeaderLookup(Object.values(overrides));
  const sections = readMarkdownTables(file.text).flatMap((rows) => sectionsBelow(rows, lookup));
  const list = readSections({ ...file, format: "markdown" }, sections, lookup, overrides);
  const header = headerWithoutLines(list, sections, lookup);
  if (header) return unreadable(file, NO_LINES, header.span);
  return list ?? unreadable(file, NO_TABLE);
}

const TOO_LONG = `This Markdown file is too long to be searched for tables (more than ${MAX_MARKDOWN} characters). Put the parts list into a file of its own, best as CSV.`;
const NO_TABLE =
  "No table of this Markdown file has a column of designators, so it holds no parts list. Give one of its tables a column with designators such as R1, C2–C5.";
