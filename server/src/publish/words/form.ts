/** The words of a published page beside the author's own. */
import type { PackKind } from "../packing/packedLines.ts";
import type { PolarMark } from "../parts/polarity.ts";

/** `#` stands for a number or name that is put in. */
export interface PageWords {
  /** Number of a step, its box, and what screen readers say of the box. */
  readonly step: string;
  readonly stepDone: string;
  readonly progress: string;
  readonly contents: string;
  readonly need: string;
  /** What the numbers and the sign beside tools mean. */
  readonly needHint: string;
  readonly tools: string;
  readonly ownSupplies: string;
  /** Of one and of several. */
  readonly steps: readonly [string, string];
  readonly parts: readonly [string, string];
  readonly readings: readonly [string, string];
  readonly upTo: string;
  readonly table: {
    readonly caption: string;
    readonly parts: string;
    readonly value: string;
    readonly look: string;
    readonly package: string;
    readonly height: string;
    readonly bag: string;
  };
  /** Printed on the part: `printed #`. */
  readonly printed: string;
  readonly bands: string;
  readonly polarity: Readonly<Record<PolarMark, string>>;
  readonly reading: {
    readonly label: string;
    readonly inside: string;
    readonly outside: string;
    readonly noNumber: string;
    readonly between: string;
    readonly below: string;
    readonly above: string;
    /** Behind limits that cannot be read, as they were written. */
    readonly unknown: string;
  };
  readonly matching: {
    readonly title: string;
    readonly part: string;
    readonly task: string;
    readonly reading: string;
    readonly result: string;
    readonly set: string;
    readonly spread: string;
    readonly total: string;
    readonly missing: string;
    readonly left: string;
    readonly tie: string;
  };
  readonly record: {
    readonly title: string;
    readonly serial: string;
    readonly date: string;
    readonly name: string;
    readonly reading: string;
    readonly limits: string;
    readonly value: string;
    /** Of the sheet that is a file of its own. */
    readonly stage: string;
    readonly inside: string;
    readonly instruments: string;
    readonly remarks: string;
    readonly signature: string;
  };
  readonly packing: {
    readonly title: string;
    readonly bag: string;
    readonly noBag: string;
    readonly noStage: string;
    readonly kinds: Readonly<Record<PackKind, string>>;
    /** What screen readers say of a box to tick. */
    readonly packed: string;
    readonly quantity: string;
    readonly what: string;
    readonly spare: string;
    readonly board: string;
    readonly total: string;
    readonly wholeKit: string;
    /** Of one and of several. */
    readonly lines: readonly [string, string];
    readonly pieces: readonly [string, string];
    readonly lengths: readonly [string, string];
    readonly spares: string;
    /** What a length of wire becomes. */
    readonly becomes: string;
    readonly optional: string;
    /** Pieces beyond the places, for picking matched sets. */
    readonly surplus: string;
    readonly made: string;
    readonly madeFrom: string;
    readonly unfitted: string;
    readonly kitNumber: string;
    readonly packedBy: string;
    readonly checkedBy: string;
    readonly faulty: string;
  };
  readonly or: string;
  readonly footnotes: string;
  readonly forced: string;
  readonly rules: string;
  readonly pictureMissing: string;
  readonly pictureElsewhere: string;
}
