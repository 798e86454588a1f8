/** Reads a parts list, whatever it is written in, as the analysis sees it. */
import type { Workbook } from "../../syntax/sheets/readWorkbook.ts";
import { decodeText, MAX_TEXT_BYTES } from "../../text/decode.ts";
import type { Overrides } from "./columns.ts";
import { readDelimited } from "./delimitedList.ts";
import { readFixedWidth } from "./fixedWidth/read.ts";
import { isMarkdown, readMarkdown } from "./markdownList.ts";
import type { PartsList } from "./partsList.ts";
import { markupKind } from "./textKind.ts";
import { ADVICE, type ListText, unreadable } from "./unreadable.ts";
import { readSheets } from "./workbookList.ts";

export interface ReadOptions {
  /** Column names, letters or numbers by meaning, from the guide's front matter. */
  readonly columns?: Overrides;
  /** The sheet of a workbook that is meant. */
  readonly sheet?: string;
}

/**
 * The parts list in a CSV, TSV or Markdown file, as bytes or as an editor's text, or in a workbook.
 * Whatever cannot be read becomes a problem at its place; a file that is no parts list gives exactly
 * one, which names its kind. Never throws. `loadPartsList` reads files of every kind.
 */
export function readPartsList(
  uri: string,
  source: Uint8Array | string | Workbook,
  { columns = {}, sheet }: ReadOptions = {},
): PartsList {
  if (typeof source === "string") {
    const isTooLong = source.length > MAX_TEXT_BYTES;
    const file = { uri, text: isTooLong ? "" : source, encoding: "utf-8" };
    return isTooLong ? unreadable(file, TOO_LONG) : readText(file, columns);
  }
  if ("sheets" in source) return readSheets(uri, source, sheet, columns);
  const decoded = decodeText(source);
  if ("text" in decoded) return readText({ uri, ...decoded }, columns);
  return unreadable({ uri, text: "", encoding: "utf-8" }, `${decoded.problem} ${ADVICE}`);
}

const TOO_LONG = `The text is longer than ${MAX_TEXT_BYTES / 2 ** 20} MB, so it is not read. Check that it is the right file.`;

function readText(file: ListText, columns: Overrides): PartsList {
  const { uri, text } = file;
  if (text.trim() === "") return unreadable(file, EMPTY);
  const markup = markupKind(text);
  if (markup) return unreadable(file, `This is ${markup}, no parts list. ${ADVICE}`);
  if (isMarkdown(uri, text)) return readMarkdown(file, columns);
  return readFixedWidth(file, columns) ?? readDelimited(file, columns);
}

const EMPTY = "The parts list is empty. Write its header and a line for each kind of part.";
