/** Figures of a hover: three figures are enough to read. */
import { formatQuantity } from "../../quantity/formatQuantity.ts";
import type { Unit } from "../../quantity/value.ts";

/** `34.3 V`, `7.29 mA`, `70 °C`. */
export function shown(amount: number, unit: Unit | "J" | "°C"): string {
  const rounded = Number(amount.toPrecision(3));
  return unit === "J" || unit === "°C"
    ? `${rounded}\u00a0${unit}`
    : formatQuantity({ amount: rounded, unit });
}
