/** Finds the header rows of a table and what stands below each: lists repeat headers per section. */
import { isDesignatorList } from "../../syntax/designatorList.ts";
import type { TableRow } from "../../syntax/tableRow.ts";
import { type HeaderName, headerName } from "./headerWords.ts";
import { sampleOf } from "./profile.ts";

/** Rows under one header, or under none. */
export interface Section {
  readonly header: TableRow | undefined;
  readonly rows: readonly TableRow[];
}

/** Columns beyond this number are not looked at. */
export const MAX_COLUMNS = 100;

/** Header cells looked up once for each text. */
export class HeaderLookup {
  readonly #known = new Map<string, HeaderName | undefined>();
  readonly #given: ReadonlySet<string>;

  /** `given`: names of columns that the guide states. */
  constructor(given: readonly string[] = []) {
    // A single letter or a number counts columns.
    const names = given.filter((name) => /\p{L}.|.\p{L}/u.test(name.trim()));
    this.#given = new Set(names.map((name) => name.trim().toLowerCase()));
  }

  get hasGiven(): boolean {
    return this.#given.size > 0;
  }

  /** Whether the guide names a column so. */
  isGiven(text: string): boolean {
    return this.hasGiven && this.#given.has(text.toLowerCase());
  }

  of(text: string): HeaderName | undefined {
    if (this.#known.has(text)) return this.#known.get(text);
    const name = headerName(text);
    // Texts of cells come here, too; there may be a great many of them.
    if (this.#known.size < 5_000) this.#known.set(text, name);
    return name;
  }
}

/**
 * Cuts the rows at their headers. Rows above the first header (titles, dates) are left out. Where
 * no row's cells are known names, the row above the first designators is the header if it may be one.
 */
export function findSections(rows: readonly TableRow[], lookup: HeaderLookup): Section[] {
  const [first, ...rest] = cutAtHeaders(rows, undefined, lookup);
  const above = belowUnknownHeader(first!.rows, rest.length === 0);
  return above ? [above, ...rest] : rest;
}

/** Cuts the rows of a table whose first row is its header, as in Markdown. */
export function sectionsBelow(rows: readonly TableRow[], lookup: HeaderLookup): Section[] {
  return cutAtHeaders(rows.slice(1), rows[0], lookup);
}

function cutAtHeaders(
  rows: readonly TableRow[],
  header: TableRow | undefined,
  lookup: HeaderLookup,
): Section[] {
  let current: { header: TableRow | undefined; rows: TableRow[] } = { header, rows: [] };
  const sections = [current];
  for (const row of rows) {
    if (isHeader(row, lookup)) {
      current = { header: row, rows: [] };
      sections.push(current);
    } else {
      current.rows.push(row);
    }
  }
  return sections;
}

const FIGURE = /\d/;

/**
 * A row of names: one that the guide states, or two known ones or more, at least half of all; and no
 * designators among them.
 */
function isHeader(row: TableRow, lookup: HeaderLookup): boolean {
  let filled = 0;
  let known = 0;
  let plain = 0;
  let given = false;
  for (let column = 0; column < Math.min(row.width, MAX_COLUMNS); column++) {
    const text = row.text(column);
    if (text === "") continue;
    filled++;
    given ||= lookup.isGiven(text);
    // A figure or a long text is no name; most rows are done after their first cells.
    if (filled - known > 4 && known === 0 && !lookup.hasGiven) return false;
    if (text.length > 60 || FIGURE.test(text)) continue;
    const name = lookup.of(text);
    if (!name) continue;
    known++;
    for (const rank of name.ranks.values()) if (rank === 0) plain++;
  }
  const isNamed = given ? filled >= 2 : known >= 2 && plain > 0 && known >= filled / 2;
  return isNamed && !hasDesignators(row);
}

function hasDesignators(row: TableRow): boolean {
  for (let column = 0; column < Math.min(row.width, MAX_COLUMNS); column++) {
    if (isDesignatorList(row.text(column))) return true;
  }
  return false;
}

/** Rows without a known header: a section where they hold designators, else a preamble. */
function belowUnknownHeader(rows: readonly TableRow[], isAll: boolean): Section | undefined {
  const column = designatorColumn(rows, isAll);
  if (column === undefined) return undefined;
  const first = rows.findIndex((row) => isDesignatorList(row.text(column)));
  const header = rows[first - 1];
  const isNamed = header !== undefined && mayBeHeader(header, column);
  return { header: isNamed ? header : undefined, rows: rows.slice(first) };
}

/** The column with most cells that are designators, if they are not just strays in a preamble. */
function designatorColumn(rows: readonly TableRow[], isAll: boolean): number | undefined {
  const counts: number[] = [];
  const sample = sampleOf(rows);
  for (const row of sample) {
    for (let column = 0; column < Math.min(row.width, MAX_COLUMNS); column++) {
      if (!isDesignatorList(row.text(column))) continue;
      counts[column] = (counts[column] ?? 0) + 1;
    }
  }
  let best: number | undefined;
  for (const [column, count] of counts.entries()) {
    if (count && count > (best === undefined ? 0 : counts[best]!)) best = column;
  }
  if (best === undefined) return undefined;
  const fewest = Math.max(isAll ? 1 : 2, sample.length / 2);
  return counts[best]! >= fewest ? best : undefined;
}

/** Words in two cells or more, one of them above the designators, and no figures. */
function mayBeHeader(row: TableRow, column: number): boolean {
  if (!row.text(column)) return false;
  let words = 0;
  for (let i = 0; i < Math.min(row.width, MAX_COLUMNS); i++) {
    const text = row.text(i);
    if (text === "") continue;
    if (!/\p{L}/u.test(text) || isDesignatorList(text)) return false;
    words++;
  }
  return words >= 2 || row.width === 1;
}
