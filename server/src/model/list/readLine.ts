/**
 * A line of a list as it is kept. Lists may have 200,000, so it holds the places of its cells, which
 * are cut from the text when they are asked for.
 */
import type { Quantity } from "../../quantity/value.ts";
import type { TableRow } from "../../syntax/tableRow.ts";
import type { Span } from "../../text/span.ts";
import {
  type Cell,
  type ListedDesignator,
  type ListLine,
  MEANINGS,
  type Meaning,
} from "./partsList.ts";
import type { RowLayout, RowView } from "./rowView.ts";
import type { LineValues } from "./values.ts";

export class ReadLine implements ListLine {
  readonly index: number;
  readonly designators: readonly ListedDesignator[];
  fitted = true;
  optional = false;
  quantity?: number;
  metres?: number;
  spare?: number;
  board?: string;
  /** The row in which the designators begin, and the one in which all else stands. */
  readonly #first: TableRow;
  readonly #row: TableRow;
  readonly #layout: RowLayout;
  readonly #isNamedThere: boolean;
  /** Shared by all lines that say the same. */
  readonly #values: LineValues;

  /** `isNamedThere`: the line is hardware that is named in the designator column. */
  constructor(
    index: number,
    designators: readonly ListedDesignator[],
    first: TableRow,
    { row, layout }: RowView,
    isNamedThere: boolean,
    values: LineValues,
  ) {
    this.index = index;
    this.designators = designators;
    this.#first = first;
    this.#row = row;
    this.#layout = layout;
    this.#isNamedThere = isNamedThere;
    this.#values = values;
  }

  get value(): Quantity | undefined {
    return this.#values.value;
  }

  get tolerance(): string | undefined {
    return this.#values.tolerance;
  }

  get power(): Quantity | undefined {
    return this.#values.power;
  }

  get voltage(): Quantity | undefined {
    return this.#values.voltage;
  }

  get current(): Quantity | undefined {
    return this.#values.current;
  }

  get height(): number | undefined {
    return this.#values.height;
  }

  get side(): "top" | "bottom" | undefined {
    return this.#values.side;
  }

  get row(): number {
    return this.#first.line;
  }

  get place(): string {
    return `${this.#layout.noun} ${this.row}`;
  }

  get span(): Span {
    return { start: this.#first.span.start, end: this.#row.span.end };
  }

  get cells(): ListLine["cells"] {
    return new LineCells(this) as ListLine["cells"];
  }

  text(meaning: Meaning): string {
    return this.#layout.text(this.#row, this.#holder(meaning));
  }

  cell(meaning: Meaning): Cell | undefined {
    return this.#layout.cell(this.#row, this.#holder(meaning));
  }

  /** The meaning of the column in which it stands. */
  #holder(meaning: Meaning): Meaning {
    if (meaning !== "description" || !this.#isNamedThere) return meaning;
    return this.#layout.text(this.#row, meaning) === "" ? "designator" : meaning;
  }
}

/** A line's cells under the names of what they mean; each is made when it is asked for. */
class LineCells {
  readonly #line: ReadLine;

  constructor(line: ReadLine) {
    this.#line = line;
  }

  cell(meaning: Meaning): Cell | undefined {
    return this.#line.cell(meaning);
  }
}

for (const meaning of MEANINGS) {
  Object.defineProperty(LineCells.prototype, meaning, {
    get(this: LineCells) {
      return this.cell(meaning);
    },
  });
}
