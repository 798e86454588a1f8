/** Physical kind of a part's value, by its unit. */
export type Unit = "Ω" | "F" | "H" | "V" | "A" | "W" | "Hz" | "m" | "%" | "1";

/** A value read from a text: `4k7` is 4700 Ω. */
export interface Quantity {
  /** In the unit without prefix. */
  readonly amount: number;
  readonly unit: Unit;
}
