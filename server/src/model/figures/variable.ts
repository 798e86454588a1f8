/** A name of the guide: the places that give it a value, the one that counts, and who uses it. */
import type { Cell } from "./cell.ts";
import type { FigurePlace } from "./place.ts";

export class Variable {
  readonly key: string;
  /** `P` of `P(R50)`. */
  readonly symbol: string;
  /** Places that give it a value or state one. */
  readonly places = new Set<FigurePlace>();
  /** Sums that use the name. */
  readonly users = new Set<Cell>();
  definition: FigurePlace | undefined;

  constructor(key: string) {
    this.key = key;
    this.symbol = key.split("(", 1)[0]!;
  }

  /**
   * The place that counts: the front matter first, then an expression, then a plain quantity, then a
   * reading; among equals the first in the guide.
   */
  choose(): FigurePlace | undefined {
    let best: FigurePlace | undefined;
    for (const place of this.places) {
      if (place.rank !== undefined && (!best || place.precedes(best))) best = place;
    }
    return best;
  }
}
