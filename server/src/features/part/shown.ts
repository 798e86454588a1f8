/** Figures of a hover: three figures are enough to read. */
import { printAmount } from "../../quantity/printing.ts";

/** `34.3 V`, `7.29 mA`, `70 °C`. */
export function shown(amount: number, unit: string): string {
  return printAmount(amount, unit, 3);
}
