/** A reading as its author limits it. */
import type { Reading } from "../../syntax/dialect.ts";

/** `< 50 mV`, `12 V ± 5 %`, `5.8 V … 6.6 V`. */
export function readingText(reading: Reading): string {
  const sign = { below: "< ", above: "> ", value: "", between: "" }[reading.limit];
  return sign + limitText(reading);
}

function limitText({ value, tolerance, upTo }: Reading): string {
  if (upTo) return `${value.text} … ${upTo.text}`;
  return tolerance ? `${value.text} ± ${tolerance.text}` : value.text;
}
