/** The parts list in a workbook: in the sheet that the guide names, else in the first that holds one. */
import type { ReadSheet, Workbook } from "../../syntax/sheets/readWorkbook.ts";
import { nearestWord } from "../../text/nearest.ts";
import type { Overrides } from "./columns.ts";
import type { ListProblem, PartsList } from "./partsList.ts";
import { headerWithoutLines, readSections } from "./readSections.ts";
import { findSections, HeaderLookup } from "./sections.ts";
import { sideBySide } from "./sideBySide.ts";
import { NO_LINES, unreadable } from "./unreadable.ts";

/** `wanted`: the sheet that the guide names. */
export function readSheets(
  uri: string,
  workbook: Workbook,
  wanted: string | undefined,
  overrides: Overrides,
): PartsList {
  const file = { uri, text: "", encoding: "utf-8" };
  if (workbook.sheets.length === 0) {
    return unreadable(file, wanted === undefined ? NO_SHEETS : noSheet(wanted, workbook.names));
  }
  const read = workbook.sheets.map((sheet) => ({ sheet, ...readSheet(uri, sheet, overrides) }));
  const found = read.filter(({ list }) => list?.lines.some((line) => line.designators.length > 0));
  // Screws alone make a list, too, but not beside one with designators.
  const { list, sheet } = found[0] ?? read.find((one) => one.list) ?? {};
  if (!list || !sheet || list.lines.length === 0) {
    const bare = read.find(({ isBare }) => isBare);
    return unreadable(file, bare ? `Sheet \`${bare.sheet.name}\`: ${NO_LINES}` : noList(workbook));
  }
  const others = found.slice(1).map((one) => one.sheet.name);
  return { ...list, problems: [...problemsOf(sheet, others), ...list.problems] };
}

function readSheet(uri: string, sheet: ReadSheet, overrides: Overrides) {
  const { text, places } = sheet;
  const lookup = new HeaderLookup(Object.values(overrides));
  const sections = sideBySide(sheet.rows, lookup).flatMap((rows) => findSections(rows, lookup));
  const source = { uri, text, encoding: "utf-8", format: "workbook", places } as const;
  const list = readSections(source, sections, lookup, overrides);
  return { list, isBare: headerWithoutLines(list, sections, lookup) !== undefined };
}

/** An empty span stands for the sheet as a whole. */
const WHOLE = { start: 0, end: 0 };

function* problemsOf(sheet: ReadSheet, others: readonly string[]): Iterable<ListProblem> {
  const report = (message: string): ListProblem => ({
    code: "unreadable-list",
    span: WHOLE,
    message,
  });
  if (others.length > 0) {
    yield report(
      `Only this sheet is read, but ${named(others)} ${others.length === 1 ? "holds" : "hold"} designators, too. Name the sheet that is meant after the file's name: \`parts: kit.xlsx#${sheet.name}\`; if each is a board of the kit, name one for each board.`,
    );
  }
  if (sheet.uncomputed.length > 0) {
    const shown = sheet.uncomputed.slice(0, 5).join(", ");
    const more = sheet.uncomputed.length > 5 ? ` and ${sheet.uncomputed.length - 5} more` : "";
    yield report(
      `The formulas in ${shown}${more} have no stored results, so these cells are read as empty. Open the file in a spreadsheet program and save it.`,
    );
  }
  if (sheet.isCut) yield report(CUT);
}

const CUT =
  "The sheet goes on, but only 200000 rows and 2000000 cells are read. Check that it is the right file.";
const NO_SHEETS =
  "This workbook has no sheet that is shown, so no parts list is found in it. Name the sheet after the file's name: `kit.xlsx#Sheet`.";

function noSheet(wanted: string, names: readonly string[]): string {
  const meant = nearestWord(wanted, names);
  const hint = meant === undefined ? "" : ` Did you mean \`${meant}\`?`;
  return `This workbook has no sheet \`${wanted}\`.${hint} It has ${named(names)}.`;
}

function noList({ sheets }: Workbook): string {
  const names = named(sheets.map(({ name }) => name));
  const where = sheets.length === 1 ? `Sheet ${names} has` : `None of the sheets ${names} has`;
  return `${where} ${sheets.length === 1 ? "no" : "a"} column of designators, so no parts list is found in this workbook. Give the list a column with designators such as R1, C2–C5, or name its sheet after the file's name.`;
}

function named(names: readonly string[]): string {
  const shown = names.slice(0, 8).map((name) => `\`${name}\``);
  const all = names.length > 8 ? [...shown, `${names.length - 8} more`] : shown;
  return all.length < 2 ? all.join("") : `${all.slice(0, -1).join(", ")} and ${all.at(-1)}`;
}
