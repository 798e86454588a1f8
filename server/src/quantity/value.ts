/** Physical kind of a part's value, by its unit. */
export type Unit = "Ω" | "F" | "H" | "V" | "A" | "W" | "Hz" | "m" | "%" | "1";

/** A value read from a text: `4k7` is 4700 Ω. */
export interface Quantity {
  /** In the unit without prefix. */
  readonly amount: number;
  readonly unit: Unit;
}

/** What the text of a value cell says. Whatever was not understood is left in `rest`. */
export interface ValueReading {
  /** The part's own value: ohms of a resistor, farads of a capacitor, volts of a Zener diode. */
  readonly value?: Quantity;
  /** `1 %`; `0.25 pF`; an asymmetric one as `+80/-20 %`. */
  readonly tolerance?: string;
  readonly power?: Quantity;
  readonly voltage?: Quantity;
  readonly current?: Quantity;
  /** The text without what was read, as written. */
  readonly rest: string;
}

/** Whether two values are the same but for rounding: 4.7 kΩ and 4700 Ω are. */
export function sameValue(a: Quantity, b: Quantity): boolean {
  if (a.unit !== b.unit) return false;
  // The steps of E192 are 1.2 % apart; a millionth only swallows rounding.
  return Math.abs(a.amount - b.amount) <= 1e-6 * Math.max(Math.abs(a.amount), Math.abs(b.amount));
}
