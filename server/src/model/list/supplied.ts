/** How many pieces of a line the kit contains, spares among them. */
import type { ListLine } from "./partsList.ts";

export interface Supplied {
  /** All pieces in the kit. */
  readonly pieces: number;
  /** Of them the spare ones. */
  readonly spare: number;
}

/**
 * `places` is how many parts have the line. Lists count in two ways: a quantity that equals the places
 * leaves the spares out, any other contains them.
 */
export function suppliedPieces({ quantity, spare = 0 }: ListLine, places: number): Supplied {
  const excludesSpares = quantity === undefined || quantity === places;
  return { pieces: excludesSpares ? places + spare : quantity, spare };
}
