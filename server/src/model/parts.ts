/** All parts of a kit: the lists of every board brought together, with identity, height and board. */
import type { ListedDesignator, ListLine, PartsList } from "./list/partsList.ts";

export interface Height {
  readonly mm: number;
  /** Where the figure comes from, in words. */
  readonly from: string;
}

/** One part with a designator. */
export interface Part {
  readonly kind: "part";
  /** Small integer, its place in `Parts.all`. */
  readonly id: number;
  readonly name: string;
  /** Empty where the kit has one board only. */
  readonly board: string;
  readonly letters: string;
  readonly list: PartsList;
  readonly line: ListLine;
  readonly listed: ListedDesignator;
  /** The line of the socket that shares the designator with its chip. */
  readonly socketLine?: ListLine;
  /** Listed for fitting (not marked do-not-fit). */
  readonly fitted: boolean;
  readonly optional: boolean;
  readonly height?: Height;
  /** Has no place in the height order of a board. */
  readonly offBoard: boolean;
  readonly side?: "top" | "bottom";
}

/** A line of the list without designators: screws, wire, knobs. */
export interface Hardware {
  readonly kind: "hardware";
  readonly id: number;
  readonly name: string;
  readonly list: PartsList;
  readonly line: ListLine;
  /** Pieces supplied; undefined when the list states none. */
  readonly supplied?: number;
  /** Metres supplied of a line by length. */
  readonly metres?: number;
  readonly spare: number;
}

/** A part or a hardware line: what a mark can use. */
export type Supply = Part | Hardware;
