/** How many pieces of a line the kit contains, spares among them. */
import { readDesignator } from "../../syntax/designators.ts";
import type { ListedDesignator, ListLine } from "./partsList.ts";

export interface Supplied {
  /** All pieces in the kit. */
  readonly pieces: number;
  /** Of them the spare ones. */
  readonly spare: number;
}

/** The parts that the names stand for: U3A and U3B are sections of U3 (ASME Y14.44-2008 2.1.3). */
export function packagesOf(names: readonly Pick<ListedDesignator, "name">[]): ReadonlySet<string> {
  return new Set(names.map(({ name }) => packageOf(name)));
}

export function packageOf(name: string): string {
  const read = readDesignator(name);
  return read?.suffix ? read.letters + read.digits : name;
}

/** How many pieces the line's designators take; a list may also count each section. */
export function placesOf({ designators, quantity, spare = 0 }: ListLine): number {
  const { length } = designators;
  if (quantity === length || (quantity ?? 0) - spare === length) return length;
  return packagesOf(designators).size;
}

/**
 * `places` is how many parts have the line. Lists count in two ways: a quantity that equals the places
 * leaves the spares out, any other contains them.
 */
export function suppliedPieces({ quantity, spare = 0 }: ListLine, places: number): Supplied {
  const excludesSpares = quantity === undefined || quantity === places;
  return { pieces: excludesSpares ? places + spare : quantity, spare };
}
