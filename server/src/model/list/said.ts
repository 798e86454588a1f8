/**
 * What a row says of its parts, their names aside: values, ratings, whether they are fitted. Lists say
 * the same in thousands of rows, so each wording is read once.
 */
import type { DesignatorList } from "../../syntax/designatorItems.ts";
import type { Amount } from "./amounts.ts";
import { isLeftOut, NOTHING, type Optional, readOptional } from "./leftOut.ts";
import type { ListedDesignator, Meaning } from "./partsList.ts";
import type { RowLayout, RowView } from "./rowView.ts";
import { type LineValues, readValues } from "./values.ts";

export interface Said {
  readonly isLeftOut: boolean;
  readonly optional: Optional;
  /** Of hardware nothing. */
  readonly values: LineValues;
}

/** A row with its names, its quantity and the class letters of its parts. */
export interface NamedRow {
  readonly view: RowView;
  readonly list: DesignatorList;
  /** None of hardware. */
  readonly names: readonly ListedDesignator[];
  readonly amount: Amount;
  readonly letters: string | undefined;
}

/** Cells that only tell one row from another. */
const NAMING: ReadonlySet<Meaning | undefined> = new Set<Meaning>([
  "item",
  "designator",
  "board",
  "bag",
]);

/** Longer and more wordings are not worth the memory. */
const MAX_LENGTH = 400;
const MAX_KEPT = 4096;

/** Reads rows of one layout. */
export class SaidReader {
  readonly #layout: RowLayout;
  readonly #isNaming: readonly boolean[];
  readonly #known = new Map<string, Said>();

  constructor(layout: RowLayout) {
    this.#layout = layout;
    this.#isNaming = layout.columns.choices.map(({ meaning }) => NAMING.has(meaning));
  }

  read(row: NamedRow): Said {
    const wording = this.#wording(row);
    if (wording === undefined) return readSaid(row);
    const known = this.#known.get(wording);
    if (known) return known;
    const said = readSaid(row);
    // Which parts a remark calls optional depends on their names.
    if (said.optional !== NOTHING) return said;
    if (this.#known.size >= MAX_KEPT) this.#known.clear();
    this.#known.set(wording, said);
    return said;
  }

  /** All that counts of a row; undefined where its names count, too, or where it is seen otherwise. */
  #wording({ view, list, names, letters }: NamedRow): string | undefined {
    if (view.layout !== this.#layout || list.remarks.length > 0) return undefined;
    let wording = names.length === 0 ? "" : `${letters} `;
    const { texts } = view;
    for (let place = 0; place < texts.length; place++) {
      const text = texts[place]!;
      // Behind its length, since a cell may hold any sign, line ends among them.
      if (!this.#isNaming[place]) wording += `${text.length} ${text}`;
    }
    return wording.length > MAX_LENGTH ? undefined : wording;
  }
}

function readSaid({ view, list, names, amount, letters }: NamedRow): Said {
  const values: LineValues = {};
  if (names.length > 0) readValues(view, letters, values);
  return {
    isLeftOut: isLeftOut(view, list, amount, letters),
    optional: readOptional(view, list, names),
    values,
  };
}
