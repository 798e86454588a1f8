/** Significant figures of a value, as codes on parts write them. */

export interface Figures {
  /** `47` of 4700. */
  readonly digits: number;
  /** The power of ten behind them: 2 for 4700 with two figures. */
  readonly exponent: number;
}

/** The value in that many figures; undefined where it has more, or is not above zero. */
export function figuresOf(amount: number, count: number): Figures | undefined {
  if (!(amount > 0) || !Number.isFinite(amount)) return undefined;
  const [mantissa, power] = amount.toExponential(count - 1).split("e");
  const digits = Number(mantissa!.replace(".", ""));
  const exponent = Number(power) - (count - 1);
  const written = Number(`${digits}e${exponent}`);
  // A millionth only swallows rounding.
  return Math.abs(written - amount) <= 1e-6 * amount ? { digits, exponent } : undefined;
}
