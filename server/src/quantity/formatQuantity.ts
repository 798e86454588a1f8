/** Part values as text: `4.7 kΩ`, `100 nF`. */
import { printAmount, printNumber } from "./printing.ts";
import type { Quantity } from "./value.ts";

/** `4.7 kΩ`, `100 nF`, `0.25 W`, `4700 µF`. Nine figures at most, always with a decimal point. */
export function formatQuantity({ amount, unit }: Quantity): string {
  return unit === "%" ? `${printNumber(amount)}\u00a0%` : printAmount(amount, unit);
}
