/**
 * Finds out what each column of a section means: by the guide's word, by its cells, by its name, in
 * this order. Names lie, cells seldom do.
 */
import type { TableRow } from "../../syntax/tableRow.ts";
import { Candidates } from "./candidates.ts";
import { chooseByName } from "./columnByName.ts";
import { chooseDesignators } from "./designatorColumn.ts";
import { readYesNo } from "./fitting.ts";
import { foldHeader, type HeaderName } from "./headerWords.ts";
import { type ColumnChoice, MEANINGS, type Meaning } from "./partsList.ts";
import { type ColumnProfile, sampleOf } from "./profile.ts";
import { chooseQuantity } from "./quantityColumn.ts";
import type { HeaderLookup } from "./sections.ts";
import { chooseValue } from "./valueColumn.ts";

/** Column names by meaning, as the guide's `columns` key gives them. */
export type Overrides = Partial<Record<Meaning, string>>;

/** What the columns of a section mean. */
export class Columns {
  readonly choices: readonly ColumnChoice[];
  /** Cells that a full row has. */
  readonly width: number;
  /** Meanings that the guide gives to a name which no column has. */
  readonly unmatched: readonly Meaning[];
  /** Whether the names alone tell a list of hardware: pieces of something. */
  readonly isHardwareList: boolean;
  readonly isPartsList: boolean;
  /** An empty cell of the fitted column means that the part is left out. */
  readonly blankIsLeftOut: boolean;
  readonly #chosen: ReadonlyMap<Meaning, number>;
  readonly #names: readonly (HeaderName | undefined)[];

  constructor(
    found: Omit<Columns, "of" | "name">,
    chosen: ReadonlyMap<Meaning, number>,
    names: readonly (HeaderName | undefined)[],
  ) {
    this.choices = found.choices;
    this.width = found.width;
    this.unmatched = found.unmatched;
    this.isHardwareList = found.isHardwareList;
    this.isPartsList = found.isPartsList;
    this.blankIsLeftOut = found.blankIsLeftOut;
    this.#chosen = chosen;
    this.#names = names;
  }

  of(meaning: Meaning): number | undefined {
    return this.#chosen.get(meaning);
  }

  name(meaning: Meaning): HeaderName | undefined {
    return this.#names[this.#chosen.get(meaning) ?? -1];
  }
}

/** Chooses the columns for rows under one header (or equal headers). */
export function chooseColumns(
  header: TableRow | undefined,
  rows: readonly TableRow[],
  lookup: HeaderLookup,
  overrides: Overrides,
): Columns {
  return new Chooser(new Candidates(header, sampleOf(rows), lookup)).choose(overrides);
}

/** Looked for by name, in this order; what is plainer comes first. */
const BY_NAME: readonly Meaning[] = [
  "item",
  "fitted",
  "optional",
  "spare",
  "tolerance",
  "power",
  "current",
  "voltage",
  "package",
  "height",
  "part number",
  "side",
  "bag",
  "board",
  "notes",
  "description",
];

class Chooser {
  readonly #columns: Candidates;

  constructor(columns: Candidates) {
    this.#columns = columns;
  }

  choose(overrides: Overrides): Columns {
    const unmatched = this.#override(overrides);
    if (!this.#columns.chosen.has("designator")) chooseDesignators(this.#columns);
    if (!this.#columns.chosen.has("quantity")) chooseQuantity(this.#columns);
    if (!this.#columns.chosen.has("value")) chooseValue(this.#columns);
    for (const meaning of BY_NAME) {
      if (!this.#columns.chosen.has(meaning)) chooseByName(this.#columns, meaning);
    }
    if (!this.#columns.chosen.has("item")) this.#chooseCounting();
    const found = {
      choices: this.#choices(),
      width: this.#columns.header?.width ?? this.#usualWidth(),
      unmatched,
      isPartsList: this.#isPartsList(),
      isHardwareList: this.#isHardwareList(),
      blankIsLeftOut: this.#blankIsLeftOut(),
    };
    return new Columns(found, this.#columns.chosen, this.#columns.names);
  }

  #override(overrides: Overrides): Meaning[] {
    const unmatched: Meaning[] = [];
    for (const meaning of MEANINGS) {
      const wanted = overrides[meaning];
      if (wanted === undefined) continue;
      const column = this.#columnNamed(wanted);
      if (column === undefined) unmatched.push(meaning);
      else this.#columns.take(meaning, column, "the guide's columns key says so");
    }
    return unmatched;
  }

  /** By its header, else by its letter or number as spreadsheets count columns. */
  #columnNamed(wanted: string): number | undefined {
    const titles = this.#columns.profiles.map((_, column) => this.#columns.title(column));
    const exact = titles.indexOf(wanted.trim());
    if (exact >= 0) return exact;
    const folded = foldHeader(wanted).name;
    const named =
      folded === "" ? -1 : titles.findIndex((title) => foldHeader(title).name === folded);
    if (named >= 0) return named;
    const letter = /^[A-Z]$/i.test(wanted.trim())
      ? wanted.trim().toUpperCase().charCodeAt(0) - 65
      : /^\d{1,3}$/.test(wanted.trim())
        ? Number(wanted) - 1
        : -1;
    return letter >= 0 && letter < this.#columns.profiles.length ? letter : undefined;
  }

  /** A nameless column of rising numbers. */
  #chooseCounting(): void {
    for (const [column, profile] of this.#columns.free()) {
      if (!profile.counting || profile.whole < 0.9 || this.#columns.isNamed(column)) continue;
      this.#columns.take("item", column, "its cells are numbers that rise from row to row");
      return;
    }
  }

  #isPartsList(): boolean {
    const column = this.#columns.chosen.get("designator");
    if (column === undefined) return false;
    const known = ["quantity", "value", "package", "part number", "description"] as const;
    const others = known.some((meaning) => this.#columns.chosen.has(meaning));
    const named = this.#columns.names[column]?.ranks.get("designator") === 0;
    return (
      others ||
      named ||
      (this.#columns.header === undefined && this.#columns.profiles[column]!.listed > 0.9)
    );
  }

  #isHardwareList(): boolean {
    const isPlain = (meaning: Meaning) => {
      const column = this.#columns.chosen.get(meaning);
      return column !== undefined && this.#columns.names[column]?.ranks.get(meaning) === 0;
    };
    return (
      isPlain("quantity") && (isPlain("description") || isPlain("value") || isPlain("part number"))
    );
  }

  #usualWidth(): number {
    const counts = new Map<number, number>();
    for (const { width } of this.#columns.rows) counts.set(width, (counts.get(width) ?? 0) + 1);
    return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0] ?? 0;
  }

  /** Only crosses for what is fitted and nothing for the rest. */
  #blankIsLeftOut(): boolean {
    const column = this.#columns.chosen.get("fitted");
    if (column === undefined || this.#columns.names[column]?.negative) return false;
    const cells = this.#columns.rows.map((row) => row.text(column));
    const said = cells.filter((text) => text !== "");
    return said.length > 0 && said.every((text) => readYesNo(text) === true);
  }

  #choices(): ColumnChoice[] {
    const meanings = new Map(
      [...this.#columns.chosen].map(([meaning, column]) => [column, meaning]),
    );
    return this.#columns.profiles.map((profile, column) => {
      const cell = this.#columns.header?.cell(column);
      const meaning = meanings.get(column);
      return {
        column,
        header: cell?.text ?? "",
        ...(cell && { headerSpan: cell.span }),
        ...(meaning && { meaning }),
        why: this.#columns.why(column) ?? this.#whyNot(profile, this.#columns.names[column]),
      };
    });
  }

  #whyNot(profile: ColumnProfile, name: HeaderName | undefined): string {
    if (!name) {
      return profile.filled === 0
        ? "its cells are empty"
        : "neither its name nor its cells tell what it is";
    }
    const [meaning] = [...name.ranks].sort((a, b) => a[1] - b[1])[0] ?? [];
    return meaning && this.#columns.chosen.has(meaning)
      ? `another column is the better one for ${meaning}`
      : "it is known by its name, but tells nothing that is needed here";
  }
}
