/** Turns the rows of a parts list into its lines, and reports what in them cannot be read. */
import type { DesignatorList, Place } from "../../syntax/designatorItems.ts";
import { readDesignatorList } from "../../syntax/designatorList.ts";
import { designatorKey } from "../../syntax/designators.ts";
import type { TableRow } from "../../syntax/tableRow.ts";
import type { Span } from "../../text/span.ts";
import { type Amount, readAmount } from "./amounts.ts";
import { mendRanges } from "./brokenRanges.ts";
import type { Columns } from "./columns.ts";
import { classLetters } from "./letters.ts";
import {
  type ListedDesignator,
  type ListLine,
  type ListProblem,
  MAX_PARTS,
  type PartsList,
} from "./partsList.ts";
import { ReadLine } from "./readLine.ts";
import { complaintsOf, shorten } from "./remarks.ts";
import { hasName, isHardwareName, isTitle, isTotal } from "./rowKinds.ts";
import { RowLayout, RowView } from "./rowView.ts";
import { SaidReader } from "./said.ts";
import { packagesOf } from "./supplied.ts";

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
  /** The row of each line in turn: what kind of part it is may stand in any of its cells. */
  readonly rows: TableRow[] = [];
  readonly #source: string;
  /** What a row is called where the author sees it. */
  readonly #noun: "line" | "row";
  /** Long cells go on in the next line, which then looks like a row. */
  readonly #mayWrap: boolean;
  #hasWrapped = false;
  /** A row whose list goes on in the next one. */
  #pending: ReadRow | undefined;
  /** Of the section in hand. */
  #said: SaidReader | undefined;
  #parts = 0;
  #full = false;

  constructor({ text, places, format }: Pick<PartsList, "text" | "places" | "format">) {
    this.#source = text;
    this.#noun = places ? "row" : "line";
    this.#mayWrap = format === "fixed width";
  }

  /** Reads the rows of a section. */
  readAll(rows: readonly TableRow[], columns: Columns): void {
    const layout = new RowLayout(columns, this.#source, this.#noun);
    this.#said = new SaidReader(layout);
    for (const row of rows) {
      if (this.#full) return;
      this.#row(new RowView(row, layout));
    }
    this.#flush();
  }

  #row(view: RowView): void {
    const text = view.text("designator");
    const place: Place = (start, end) => view.designatorPlace(start, end);
    const list = mendRanges(readDesignatorList(text, place), text, place);
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
    const said = this.#said!.read({ view, list, names, amount, letters });
    const { all, some } = said.optional;
    const board = view.text("board");
    const isNamedThere = isHardware && list.names.length + list.remarks.length > 0;
    const line = new ReadLine(
      this.lines.length,
      withMarks(names, some),
      first,
      view,
      isNamedThere,
      said.values,
    );
    line.fitted = !said.isLeftOut;
    line.optional = all;
    if (amount.kind === "pieces") line.quantity = amount.count;
    if (amount.kind === "length") line.metres = amount.metres;
    if (spare !== undefined) line.spare = spare;
    if (board !== "") line.board = board;
    this.lines.push(line);
    this.rows.push(view.row);
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

  #reportFault({ layout, row }: RowView, list: DesignatorList): void {
    const { fault } = layout;
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
    const text = view.text("quantity");
    if (text === "") return;
    const place = () => view.cell("quantity")!.span;
    if (amount.kind === "unread") {
      this.#report(
        "count-mismatch",
        place(),
        `The quantity "${shorten(text)}" is no number of pieces or length that can be read, so nothing is counted here. Write a whole number.`,
        line.index,
      );
      return;
    }
    const { quantity, spare = 0, designators } = line;
    // What could not be read of the designators is reported already.
    if (!quantity || designators.length === 0 || list.problems.length > 0) return;
    const counts = [quantity, quantity - spare];
    if (counts.includes(designators.length)) return;
    if (counts.includes(packagesOf(designators).size)) return;
    const names = designators.length === 1 ? "1 designator" : `${designators.length} designators`;
    this.#report(
      "count-mismatch",
      place(),
      `The quantity is ${quantity}, but the line has ${names}, so builder and packer will count differently. Correct the quantity or the designators.`,
      line.index,
    );
  }

  #report(code: ListProblem["code"], span: Span, message: string, line?: number): void {
    this.problems.push({ code, span, message, ...(line !== undefined && { line }) });
  }
}

/** `optional`: keys of those that are marked as optional. */
function withMarks(
  names: readonly ListedDesignator[],
  optional: ReadonlySet<string>,
): readonly ListedDesignator[] {
  if (optional.size === 0) return names;
  return names.map((one) =>
    optional.has(designatorKey(one.name)) ? { ...one, optional: true } : one,
  );
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
