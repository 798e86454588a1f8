/** The columns of a section while it is found out what they mean. */
import type { TableRow } from "../../syntax/tableRow.ts";
import type { HeaderName } from "./headerWords.ts";
import type { Meaning } from "./partsList.ts";
import { type ColumnProfile, profileColumn } from "./profile.ts";
import { type HeaderLookup, MAX_COLUMNS } from "./sections.ts";

export class Candidates {
  readonly header: TableRow | undefined;
  /** A sample of the section's rows. */
  readonly rows: readonly TableRow[];
  /** What a column's header may mean, where it is known. */
  readonly names: readonly (HeaderName | undefined)[];
  readonly profiles: readonly ColumnProfile[];
  readonly #chosen = new Map<Meaning, number>();
  readonly #why = new Map<number, string>();

  constructor(header: TableRow | undefined, rows: readonly TableRow[], lookup: HeaderLookup) {
    this.header = header;
    this.rows = rows;
    const width = Math.min(widthOf(header, rows), MAX_COLUMNS);
    const columns = Array.from({ length: width }, (_, column) => column);
    this.names = columns.map((column) => lookup.of(this.title(column)));
    this.profiles = columns.map((column) => profileColumn(rows, column));
  }

  /** The column that was chosen for each meaning. */
  get chosen(): ReadonlyMap<Meaning, number> {
    return this.#chosen;
  }

  /** Columns whose meaning is open. */
  *free(): Iterable<[number, ColumnProfile]> {
    const taken = new Set(this.#chosen.values());
    for (const [column, profile] of this.profiles.entries()) {
      if (!taken.has(column)) yield [column, profile];
    }
  }

  take(meaning: Meaning, column: number, why: string): void {
    this.#chosen.set(meaning, column);
    this.tell(column, why);
  }

  /** Keeps why a column means what it means, or does not. */
  tell(column: number, why: string): void {
    this.#why.set(column, why);
  }

  why(column: number): string | undefined {
    return this.#why.get(column);
  }

  title(column: number): string {
    return this.header?.cell(column)?.text ?? "";
  }

  /** Whether the column has a name that is known. */
  isNamed(column: number): boolean {
    return this.names[column] !== undefined;
  }
}

function widthOf(header: TableRow | undefined, rows: readonly TableRow[]): number {
  return rows.reduce((most, row) => Math.max(most, row.width), header?.width ?? 0);
}

/** As a reason tells it: `80 %`. */
export function percent(share: number): string {
  return `${Math.round(share * 100)} %`;
}
