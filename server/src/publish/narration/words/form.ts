/** The form of the words by which figures are spoken, and of a script's own words, one file a language. */

/** Of one and of several. */
export type OneAndMany = readonly [one: string, many: string];

/** `#` stands for a number or name that is put in. */
export interface NarrationWords {
  /** Words a minute of somebody who explains; where it is from stands in `time.ts`. */
  readonly wordsPerMinute: number;
  /** Between the ends of a range. */
  readonly to: string;
  readonly and: string;
  /** Behind a length, before what it is of; empty where nothing is said. */
  readonly of: string;
  readonly minus: string;
  readonly plusMinus: string;
  readonly below: string;
  readonly above: string;
  /** Between the units of a quotient. */
  readonly per: string;
  /** From nought to twelve. */
  readonly numbers: readonly string[];
  /** Names of the SI's prefixes, by their signs. */
  readonly prefixes: Readonly<Record<Prefix, string>>;
  /** Names of units by their symbols, without prefix. */
  readonly units: Readonly<Record<UnitName, OneAndMany>>;
  /** Where prefix and unit grow together: `kΩ` is a kilohm. */
  readonly grown: Readonly<Record<string, OneAndMany>>;
  readonly script: ScriptWords;
}

export interface ScriptWords {
  readonly title: string;
  /** Rate, and how long speaking takes. */
  readonly spoken: string;
  readonly bench: string;
  /** Of a stage or step: how long speaking it takes, and doing it. */
  readonly toSpeak: string;
  readonly toDo: string;
  /** Marks a time that the author has estimated. */
  readonly estimated: string;
  readonly needs: string;
  readonly explained: string;
}

export type Prefix = "p" | "n" | "µ" | "m" | "c" | "k" | "M" | "G";

export type UnitName =
  | "Ω"
  | "V"
  | "A"
  | "W"
  | "F"
  | "H"
  | "Hz"
  | "m"
  | "s"
  | "g"
  | "J"
  | "N"
  | "N·m"
  | "Pa"
  | "mm²"
  | "min"
  | "h"
  | "Ah"
  | "Wh"
  | "K"
  | "°C"
  | "°"
  | "%"
  | "dB";
