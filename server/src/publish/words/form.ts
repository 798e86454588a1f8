/** The words of a published page beside the author's own. */
import type { PolarMark } from "../parts/polarity.ts";

/** `#` stands for a number or name that is put in. */
export interface PageWords {
  /** Number of a step, its box, and what screen readers say of the box. */
  readonly step: string;
  readonly stepDone: string;
  readonly progress: string;
  readonly contents: string;
  readonly need: string;
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
  };
  readonly or: string;
  readonly footnotes: string;
  readonly forced: string;
  readonly rules: string;
  readonly pictureMissing: string;
  readonly pictureElsewhere: string;
}
