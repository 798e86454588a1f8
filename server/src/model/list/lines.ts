/** Turns the rows of a parts list into its lines, and reports what in them cannot be read. */
import { type DesignatorList, readDesignatorList } from "../../syntax/designatorList.ts";
import { designatorKey } from "../../syntax/designators.ts";
import type { TableRow } from "../../syntax/tableRow.ts";
import type { Span } from "../../text/span.ts";
import { type Amount, readAmount } from "./amounts.ts";
import { mendRanges } from "./brokenRanges.ts";
import type { Columns } from "./columns.ts";
import { isLeftOut, readOptional } from "./leftOut.ts";
import { classLetters } from "./letters.ts";
import {
  type Cell,
  type ListedDesignator,
  type ListLine,
  type ListProblem,
  MAX_PARTS,
  MEANINGS,
  type Meaning,
  type PartsList,
} from "./partsList.ts";
import { complaintsOf, shorten } from "./remarks.ts";
import { hasName, isHardwareName, isTitle, isTotal } from "./rowKinds.ts";
import { RowView } from "./rowView.ts";
import { packagesOf } from "./supplied.ts";
import { ValueReader } from "./values.ts";

const WRAPPED =
  "This line has neither designators nor a quantity. It and others like it are taken for the rest of the line above, and nothing in them is counted. If it is a part of its own, give it a quantity.";

/** A row with its designators read. */
interface ReadRow {
  readonly view: RowView;
  readonly list: DesignatorList;
  readonly names: readonly ListedDesignator[];
  /** The row in which the list began. */
  readonly first: TableRow;
}

export class LineReader {
  readonly lines: ListLine[] = [];
  readonly problems: ListProblem[] = [];
  /** The row of each line: what kind of part it is may stand in any of its cells. */
  readonly rowOf = new Map<ListLine, TableRow>();
  readonly #source: string;
  /** What a row is called where the author sees it. */
  readonly #noun: "line" | "row";
  /** Long cells go on in the next line, which then looks like a row. */
  readonly #mayWrap: boolean;
  #hasWrapped = false;
  readonly #values = new ValueReader();
  /** A row whose list goes on in the next one. */
  #pending: ReadRow | undefined;
  #parts = 0;
  #full = false;

  constructor({ text, places, format }: Pick<PartsList, "text" | "places" | "format">) {
    this.#source = text;
    this.#noun = places ? "row" : "line";
    this.#mayWrap = format === "fixed width";
  }

  /** Reads the rows of a section. */
  readAll(rows: readonly TableRow[], columns: Columns): void {
    for (const row of rows) {
      if (this.#full) return;
      this.#row(new RowView(row, columns, this.#source));
    }
    this.#flush();
  }

  #row(view: RowView): void {
    const text = view.text("designator");
    const read = readDesignatorList(text, (start, end) => view.designatorPlace(start, end));
    const list = mendRanges(read, text, ({ start, end }) => view.designatorPlace(start, end));
    if (isTitle(view, list) || isTotal(view, list)) return;
    const isHardware = list.names.length === 0 || isHardwareName(view, list);
    const names = isHardware ? [] : list.names;
    const pending = this.#pending;
    if (names.length === 0) {
      if (this.#mayWrap && view.text("quantity") === "") {
        this.#wrapped(view);
        return;
      }
      this.#flush();
      this.#add({ view, list, names, first: view.row });
      return;
    }
    const joined: ReadRow = {
      view,
      list,
      names: pending ? [...pending.names, ...names] : names,
      first: pending?.first ?? view.row,
    };
    this.#pending = undefined;
    // A row that holds nothing but a list ending in a comma goes on in the next one.
    if (list.goesOn && !hasName(view) && view.text("quantity") === "") this.#pending = joined;
    else this.#add(joined);
  }

  /** Tells the first of them; more would say the same. */
  #wrapped({ row }: RowView): void {
    if (!this.#hasWrapped) this.#report("unreadable-list", row.span, WRAPPED);
    this.#hasWrapped = true;
  }

  #flush(): void {
    const pending = this.#pending;
    this.#pending = undefined;
    if (pending) this.#add(pending);
  }

  #add(row: ReadRow): void {
    const { view, list, first } = row;
    const isHardware = row.names.length === 0;
    const names = this.#within(row);
    const letters = classLetters(names);
    const amount = readAmount(view.text("quantity"));
    const spare = spareOf(view, amount);
    const { all, some } = readOptional(view, list, names);
    const board = view.text("board");
    const line: { -readonly [Key in keyof ListLine]: ListLine[Key] } = {
      index: this.lines.length,
      row: first.line,
      place: `${this.#noun} ${first.line}`,
      span: { start: first.span.start, end: view.row.span.end },
      cells: cellsOf(view, isHardware && list.names.length + list.remarks.length > 0),
      designators: some.size === 0 ? names : names.map((one) => marked(one, some)),
      fitted: !isLeftOut(view, list, amount, letters),
      optional: all,
    };
    // Set one by one: spreading optional properties costs much for thousands of lines.
    if (amount.kind === "pieces") line.quantity = amount.count;
    if (amount.kind === "length") line.metres = amount.metres;
    if (spare !== undefined) line.spare = spare;
    if (!isHardware) this.#values.read(view, letters, line);
    if (board !== "") line.board = board;
    this.lines.push(line);
    this.rowOf.set(line, view.row);
    this.#reportFault(view, list);
    for (const { span, message } of complaintsOf(view, list, isHardware)) {
      this.#report("designator-syntax", span, message);
    }
    this.#reportCount(view, line, list, amount);
  }

  /** The names that still fit into the list. */
  #within({ names, view }: ReadRow): readonly ListedDesignator[] {
    const room = MAX_PARTS - this.#parts;
    this.#parts += names.length;
    if (names.length <= room) return names;
    this.#full = true;
    this.#report(
      "unreadable-list",
      view.cell("designator")?.span ?? view.row.span,
      `The list has more than ${MAX_PARTS} designators; from here on it is not read. Check that it is the right file.`,
    );
    return names.slice(0, room);
  }

  #reportFault({ fault, row }: RowView, list: DesignatorList): void {
    if (fault === "first-cell-missing") {
      this.#report(
        "designator-syntax",
        row.span,
        "This row has one cell less than its header. It is read as if the first cell were missing; put the missing delimiter back.",
      );
    } else if (fault === "unquoted-list") {
      this.#report(
        "designator-syntax",
        row.span,
        `This row has more cells than its header, because its ${list.names.length} designators are not in quotes. They are read as one cell; put quotes round them.`,
      );
    }
  }

  #reportCount(view: RowView, line: ListLine, list: DesignatorList, amount: Amount): void {
    const cell = view.cell("quantity");
    if (!cell || cell.text === "") return;
    if (amount.kind === "unread") {
      this.#report(
        "count-mismatch",
        cell.span,
        `The quantity "${shorten(cell.text)}" is no number of pieces or length that can be read, so nothing is counted here. Write a whole number.`,
        line.index,
      );
      return;
    }
    const { quantity, spare = 0, designators } = line;
    // What could not be read of the designators is reported already.
    if (!quantity || designators.length === 0 || list.problems.length > 0) return;
    const counts = [designators.length, packagesOf(designators).size];
    if (counts.some((count) => quantity === count || quantity - spare === count)) return;
    const names = designators.length === 1 ? "1 designator" : `${designators.length} designators`;
    this.#report(
      "count-mismatch",
      cell.span,
      `The quantity is ${quantity}, but the line has ${names}, so builder and packer will count differently. Correct the quantity or the designators.`,
      line.index,
    );
  }

  #report(code: ListProblem["code"], span: Span, message: string, line?: number): void {
    this.problems.push({ code, span, message, ...(line !== undefined && { line }) });
  }
}

function marked(one: ListedDesignator, optional: ReadonlySet<string>): ListedDesignator {
  return optional.has(designatorKey(one.name)) ? { ...one, optional: true } : one;
}

/** Pieces to spare; a cross in the column makes the whole line spare. */
function spareOf(view: RowView, amount: Amount): number | undefined {
  const text = view.text("spare");
  if (text !== "") {
    const spare = readAmount(text);
    if (spare.kind === "pieces") return spare.count;
    if (/^(?:x|y|yes|ja|oui|s[ií])$/iu.test(text) && amount.kind === "pieces") return amount.count;
  }
  return amount.kind === "pieces" ? amount.spare : undefined;
}

/** The line's cells by meaning. Hardware named in the designator column is described there. */
function cellsOf(view: RowView, isNamedThere: boolean): ListLine["cells"] {
  const cells: { [meaning in Meaning]?: Cell } = {};
  for (const meaning of MEANINGS) {
    const cell = view.cell(meaning);
    if (cell) cells[meaning] = cell;
  }
  if (isNamedThere && !cells.description?.text && cells.designator) {
    cells.description = cells.designator;
  }
  return cells;
}
