/** Reads spreadsheet files as they come. */
import { isOds, readOds } from "./ods.ts";
import { Refused } from "./refused.ts";
import type { Sheet } from "./sheet.ts";
import { type SheetText, textOfSheet } from "./sheetText.ts";
import { isXlsx, openXlsx } from "./xlsx.ts";
import { Archive, type Budget } from "./zip.ts";

/** A sheet that was read. */
export interface ReadSheet extends SheetText {
  readonly name: string;
  /** Names of cells whose formula has no stored result. */
  readonly uncomputed: readonly string[];
  readonly isCut: boolean;
}

export interface Workbook {
  /** Names of all sheets, hidden ones included, in order. */
  readonly names: readonly string[];
  /** The sheet that was asked for, else those that are not hidden. */
  readonly sheets: readonly ReadSheet[];
}

/** What is parsed of one file at most; 100,000 lines of a list fit. */
const MAX_TEXT = 40 * 2 ** 20;
/** Bytes unpacked at most: a million formatted rows without content are left out before parsing. */
const MAX_UNPACKED = 4 * MAX_TEXT;

/**
 * The sheet of that name, or all that are not hidden. A file that cannot be read gives the reason, as
 * a sentence. Never throws.
 */
export function readWorkbook(bytes: Uint8Array, wanted?: string): Workbook | { problem: string } {
  try {
    return open(bytes, wanted);
  } catch (error) {
    if (error instanceof Refused) return { problem: error.message };
    throw error;
  }
}

function open(bytes: Uint8Array, wanted: string | undefined): Workbook {
  const archive = new Archive(bytes);
  const budget: Budget = { bytes: MAX_UNPACKED, text: MAX_TEXT };
  const entries = entriesOf(archive, budget);
  const names = entries.map(({ name }) => name);
  const chosen =
    wanted === undefined
      ? entries.filter(({ isHidden }) => !isHidden)
      : entries.filter((one) => one === entries[indexOfSheet(names, wanted)]);
  return { names, sheets: chosen.map((entry) => readSheet(entry.read())) };
}

function entriesOf(archive: Archive, budget: Budget) {
  if (isOds(archive)) {
    const sheets = readOds(archive, budget);
    return sheets.map((sheet) => ({ ...sheet, read: () => sheet }));
  }
  if (isXlsx(archive)) return openXlsx(archive, budget);
  throw new Refused("This zip archive holds no spreadsheet, so nothing in it is read.");
}

/** The sheet of that name, whatever its case; -1 when there is none. */
function indexOfSheet(names: readonly string[], wanted: string): number {
  const exact = names.indexOf(wanted);
  if (exact >= 0) return exact;
  const folded = wanted.trim().toLowerCase();
  return names.findIndex((name) => name.trim().toLowerCase() === folded);
}

function readSheet(sheet: Sheet): ReadSheet {
  const { name, uncomputed, isCut } = sheet;
  return { name, uncomputed, isCut, ...textOfSheet(sheet) };
}
