/**
 * Finds out what each column of a section means: by the guide's word, by its cells, by its name, in
 * this order. Names lie, cells seldom do.
 */
import { readValue } from "../../quantity/readValue.ts";
import { glanceAtList, readDesignatorList } from "../../syntax/designatorList.ts";
import type { TableRow } from "../../syntax/tableRow.ts";
import { readAmount } from "./amounts.ts";
import { readYesNo } from "./fitting.ts";
import { foldHeader, type HeaderName } from "./headerWords.ts";
import { classLetters, isPassive } from "./letters.ts";
import { type ColumnChoice, MEANINGS, type Meaning } from "./partsList.ts";
import { type ColumnProfile, profileColumn, sampleOf } from "./profile.ts";
import { type HeaderLookup, MAX_COLUMNS } from "./sections.ts";

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
  return new Chooser(header, sampleOf(rows), lookup).choose(overrides);
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
  readonly #header: TableRow | undefined;
  readonly #rows: readonly TableRow[];
  readonly #width: number;
  readonly #names: readonly (HeaderName | undefined)[];
  readonly #profiles: readonly ColumnProfile[];
  readonly #chosen = new Map<Meaning, number>();
  readonly #why = new Map<number, string>();

  constructor(header: TableRow | undefined, rows: readonly TableRow[], lookup: HeaderLookup) {
    this.#header = header;
    this.#rows = rows;
    this.#width = Math.min(widthOf(header, rows), MAX_COLUMNS);
    const columns = Array.from({ length: this.#width }, (_, column) => column);
    this.#names = columns.map((column) => lookup.of(this.#title(column)));
    this.#profiles = columns.map((column) => profileColumn(rows, column));
  }

  choose(overrides: Overrides): Columns {
    const unmatched = this.#override(overrides);
    if (!this.#chosen.has("designator")) this.#chooseDesignators();
    if (!this.#chosen.has("quantity")) this.#chooseQuantity();
    if (!this.#chosen.has("value")) this.#chooseValue();
    for (const meaning of BY_NAME) if (!this.#chosen.has(meaning)) this.#chooseByName(meaning);
    if (!this.#chosen.has("item")) this.#chooseCounting();
    const found = {
      choices: this.#choices(),
      width: this.#header?.width ?? this.#usualWidth(),
      unmatched,
      isPartsList: this.#isPartsList(),
      isHardwareList: this.#isHardwareList(),
      blankIsLeftOut: this.#blankIsLeftOut(),
    };
    return new Columns(found, this.#chosen, this.#names);
  }

  #override(overrides: Overrides): Meaning[] {
    const unmatched: Meaning[] = [];
    for (const meaning of MEANINGS) {
      const wanted = overrides[meaning];
      if (wanted === undefined) continue;
      const column = this.#columnNamed(wanted);
      if (column === undefined) unmatched.push(meaning);
      else this.#take(meaning, column, "the guide's columns key says so");
    }
    return unmatched;
  }

  /** By its header, else by its letter or number as spreadsheets count columns. */
  #columnNamed(wanted: string): number | undefined {
    const titles = this.#profiles.map((_, column) => this.#title(column));
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
    return letter >= 0 && letter < this.#width ? letter : undefined;
  }

  /** The column whose cells list designators; its name counts where several could be it. */
  #chooseDesignators(): void {
    let best: number | undefined;
    let most = 0;
    for (const [column, profile] of this.#free()) {
      const rank = this.#names[column]?.ranks.get("designator");
      const bonus = rank === undefined ? 0 : rank === 0 ? 0.35 : 0.15;
      const score = this.#designatorScore(profile, rank) + bonus;
      // Packages (`RM5`) and type numbers have a designator's form, too.
      const isOther = rank === undefined && this.#isNamed(column);
      const isOne =
        profile.listed >= (isOther ? 0.8 : 0.5) ||
        (rank === 0 && (profile.listed > 0.1 || profile.named >= 0.5));
      if (!isOne || score <= most) continue;
      most = score;
      best = column;
    }
    if (best === undefined) return;
    const { listed, named } = this.#profiles[best]!;
    const byName = this.#names[best]?.ranks.has("designator") ? ", and its name says so" : "";
    this.#take(
      "designator",
      best,
      `${percent(Math.max(listed, named))} of its cells are designators${byName}`,
    );
  }

  #designatorScore(profile: ColumnProfile, rank: number | undefined): number {
    const listed = rank === 0 ? Math.max(profile.listed, profile.named / 2) : profile.listed;
    const coverage = profile.filled / Math.max(1, this.#rows.length);
    return listed * Math.max(profile.plausible, 0.2) * (0.4 + 0.6 * coverage);
  }

  /** The column that counts the designators beside it, else the one that is called so. */
  #chooseQuantity(): void {
    const lengths = this.#listLengths();
    let best: { column: number; score: number; why: string } | undefined;
    for (const [column, profile] of this.#free()) {
      const rank = this.#names[column]?.ranks.get("quantity");
      const { compared, agreeing, several } = this.#agreement(column, lengths);
      const share = compared === 0 ? 0 : agreeing / compared;
      const counts = share >= 0.8 && compared >= lengths.size / 2 && compared > 0;
      const says =
        (rank === 0 && this.#isAmounts(column)) ||
        (rank === 1 && profile.whole > 0.5 && (counts || (compared === 0 && !profile.counting)));
      // A column of ones beside single parts tells nothing, unless its name does not contradict.
      if (!says && !(counts && (several > 1 || !this.#isNamed(column)))) continue;
      const score =
        (counts ? share + Math.min(1, several / 2) : 0) + (says ? 1 - (rank ?? 0) / 4 : 0);
      if (best && score <= best.score) continue;
      const seen = `in ${percent(share)} of the rows it is the number of designators`;
      const why = says ? (counts ? `${seen}, and its name says so` : "its name says so") : seen;
      best = { column, score, why };
    }
    if (best) this.#take("quantity", best.column, best.why);
  }

  /** `Nombre` heads numbers in French and names in Spanish. */
  #isAmounts(column: number): boolean {
    const cells = this.#rows.map((row) => row.text(column)).filter((text) => text !== "");
    const read = cells.filter((text) => readAmount(text).kind !== "unread");
    return read.length >= cells.length / 4;
  }

  /** How many designators each row has that has any. */
  #listLengths(): ReadonlyMap<TableRow, number> {
    const lengths = new Map<TableRow, number>();
    const column = this.#chosen.get("designator");
    if (column === undefined) return lengths;
    for (const row of this.#rows) {
      const { names } = readDesignatorList(row.text(column));
      if (names.length > 0) lengths.set(row, names.length);
    }
    return lengths;
  }

  #agreement(column: number, lengths: ReadonlyMap<TableRow, number>) {
    let compared = 0;
    let agreeing = 0;
    let several = 0;
    for (const [row, length] of lengths) {
      const text = row.text(column);
      const amount = text ? readAmount(text) : undefined;
      if (amount?.kind !== "pieces") continue;
      compared++;
      if (amount.count !== length) continue;
      agreeing++;
      if (length > 1) several++;
    }
    return { compared, agreeing, several };
  }

  /** The column whose cells read as values of the passive parts beside them, else by name. */
  #chooseValue(): void {
    let best: { column: number; score: number; share: number } | undefined;
    let refuted = false;
    let doubtful = false;
    let isDescribed = false;
    for (const [column] of this.#free()) {
      const rank = this.#names[column]?.ranks.get("value");
      const { compared, read } = this.#valueReadings(column);
      const share = compared === 0 ? 0 : read / compared;
      if (rank === undefined && this.#isNamed(column)) {
        isDescribed ||= share >= 0.5;
        continue;
      }
      if (rank !== undefined && rank > 0 && compared > 0 && share < 0.2) {
        doubtful = true;
        if (compared >= 3) refuted = true;
      }
      if (share < 0.5) continue;
      const score = share + (rank === undefined ? 0 : 0.4 - rank / 10);
      if (!best || score > best.score) best = { column, score, share };
    }
    if (best) {
      const why = `${percent(best.share)} of its cells beside resistors, capacitors and coils are values`;
      this.#take("value", best.column, why);
    } else {
      // A loose name (`Type`) is no value's where the values stand in a column of another name.
      this.#chooseByName("value", refuted || (doubtful && isDescribed) ? 0 : 2);
    }
  }

  #valueReadings(column: number) {
    const designators = this.#chosen.get("designator");
    let compared = 0;
    let read = 0;
    if (designators === undefined) return { compared, read };
    for (const row of this.#rows) {
      const letters = classLetters(glanceAtList(row.text(designators)).names);
      if (!isPassive(letters)) continue;
      compared++;
      if (readValue(row.text(column), letters).value) read++;
    }
    return { compared, read };
  }

  #chooseByName(meaning: Meaning, loosest = 2): void {
    let best: { column: number; rank: number; filled: number } | undefined;
    for (const [column, profile] of this.#free()) {
      const rank = this.#names[column]?.ranks.get(meaning);
      if (rank === undefined || rank > loosest || this.#isRefuted(meaning, column)) continue;
      const { filled } = profile;
      if (best && (rank > best.rank || (rank === best.rank && filled <= best.filled))) continue;
      best = { column, rank, filled };
    }
    if (!best) return;
    const why =
      best.rank === 0
        ? "its name says so"
        : "its name may mean it, and no other column fits better";
    this.#take(meaning, best.column, why);
  }

  /** Cells that do not belong to the column's name: footprints `1` and `2`. */
  #isRefuted(meaning: Meaning, column: number): boolean {
    if (meaning === "item") return this.#profiles[column]!.filled > 0 && !this.#isItems(column);
    if (meaning !== "package") return false;
    let small = 0;
    for (const row of this.#rows) if (/^\d{1,2}$/.test(row.text(column))) small++;
    const { filled } = this.#profiles[column]!;
    if (filled === 0 || small <= filled / 2) return false;
    this.#why.set(column, "its name means package, but its cells are mere numbers");
    return true;
  }

  #isItems(column: number): boolean {
    const { whole } = this.#profiles[column]!;
    return whole >= 0.5 || this.#rows.every((row) => row.text(column).length <= 12);
  }

  /** A nameless column of rising numbers. */
  #chooseCounting(): void {
    for (const [column, profile] of this.#free()) {
      if (!profile.counting || profile.whole < 0.9 || this.#isNamed(column)) continue;
      this.#take("item", column, "its cells are numbers that rise from row to row");
      return;
    }
  }

  #take(meaning: Meaning, column: number, why: string): void {
    this.#chosen.set(meaning, column);
    this.#why.set(column, why);
  }

  *#free(): Iterable<[number, ColumnProfile]> {
    const taken = new Set(this.#chosen.values());
    for (const [column, profile] of this.#profiles.entries()) {
      if (!taken.has(column)) yield [column, profile];
    }
  }

  #title(column: number): string {
    return this.#header?.cell(column)?.text ?? "";
  }

  /** Whether the column has a name that is known. */
  #isNamed(column: number): boolean {
    return this.#names[column] !== undefined;
  }

  #isPartsList(): boolean {
    const column = this.#chosen.get("designator");
    if (column === undefined) return false;
    const known = ["quantity", "value", "package", "part number", "description"] as const;
    const others = known.some((meaning) => this.#chosen.has(meaning));
    const named = this.#names[column]?.ranks.get("designator") === 0;
    return others || named || (this.#header === undefined && this.#profiles[column]!.listed > 0.9);
  }

  #isHardwareList(): boolean {
    const isPlain = (meaning: Meaning) => {
      const column = this.#chosen.get(meaning);
      return column !== undefined && this.#names[column]?.ranks.get(meaning) === 0;
    };
    return (
      isPlain("quantity") && (isPlain("description") || isPlain("value") || isPlain("part number"))
    );
  }

  #usualWidth(): number {
    const counts = new Map<number, number>();
    for (const { width } of this.#rows) counts.set(width, (counts.get(width) ?? 0) + 1);
    return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0] ?? 0;
  }

  /** Only crosses for what is fitted and nothing for the rest. */
  #blankIsLeftOut(): boolean {
    const column = this.#chosen.get("fitted");
    if (column === undefined || this.#names[column]?.negative) return false;
    const cells = this.#rows.map((row) => row.text(column));
    const said = cells.filter((text) => text !== "");
    return said.length > 0 && said.every((text) => readYesNo(text) === true);
  }

  #choices(): ColumnChoice[] {
    const meanings = new Map([...this.#chosen].map(([meaning, column]) => [column, meaning]));
    return this.#profiles.map((profile, column) => {
      const cell = this.#header?.cell(column);
      const meaning = meanings.get(column);
      return {
        column,
        header: cell?.text ?? "",
        ...(cell && { headerSpan: cell.span }),
        ...(meaning && { meaning }),
        why: this.#why.get(column) ?? this.#whyNot(profile, this.#names[column]),
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
    return meaning && this.#chosen.has(meaning)
      ? `another column is the better one for ${meaning}`
      : "it is known by its name, but tells nothing that is needed here";
  }
}

function widthOf(header: TableRow | undefined, rows: readonly TableRow[]): number {
  return rows.reduce((most, row) => Math.max(most, row.width), header?.width ?? 0);
}

function percent(share: number): string {
  return `${Math.round(share * 100)} %`;
}
