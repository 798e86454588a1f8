/** Figures of the guide that are plain quantities: `13.8 V ± 10 %`, `95 °C`. */
import type { Guide } from "../../model/guide.ts";
import type { Figure } from "../../syntax/dialect.ts";

/** A quantity with its limits, in the unit without prefix. */
export interface Range {
  readonly low: number;
  readonly high: number;
  readonly unit: "V" | "W" | "Ω" | "°C" | "K";
}

export interface NamedRange extends Range {
  /** `VCC`; `V` of `V(C15)`. */
  readonly symbol: string;
  /** `C15` of `V(C15)`. */
  readonly subject: string | undefined;
}

const PLAIN =
  /^([±+\u2212-]?) ?(\d{1,9}(?:[.,]\d{1,9})?) ?([mkM]?)(V|W|Ω|°C|K)(?: ?± ?(\d{1,2}(?:[.,]\d{1,3})?) ?%)?(?: ?AC| ?DC| ?rms)?$/;
const PREFIX: Readonly<Record<string, number>> = { "": 1, m: 1e-3, k: 1e3, M: 1e6 };
const NAME = /^([^()\s]+)(?:\(\s*([^()\s,]+)\s*\))?$/;

/** The range of a plain quantity; `±40 V` reaches from −40 V to 40 V. Undefined for anything else. */
export function readRange(text: string): Range | undefined {
  const match = PLAIN.exec(
    text
      .trim()
      .replace(/[\s\u00a0\u202f]+/g, " ")
      .replace(/ohm/i, "Ω"),
  );
  if (!match) return undefined;
  const [, sign, digits, prefix, unit, percent] = match;
  const size = number(digits!) * PREFIX[prefix!]!;
  const most = size * (1 + number(percent ?? "0") / 100);
  const least = size * (1 - number(percent ?? "0") / 100);
  const found = { unit: unit as Range["unit"] };
  if (sign === "±") return { low: -most, high: most, ...found };
  if (sign === "-" || sign === "\u2212") return { low: -most, high: -least, ...found };
  return { low: least, high: most, ...found };
}

/** The named quantities of `supply` and `figures` in the front matter. */
export function namedRanges({ frontMatter }: Guide): readonly NamedRange[] {
  return [...frontMatter.supply, ...frontMatter.figures].flatMap(({ name, value }) => {
    const range = readRange(value);
    const match = NAME.exec(name);
    return range && match ? [{ ...range, symbol: match[1]!, subject: match[2] }] : [];
  });
}

/** The range that a figure in the text states or expects. */
export function rangeOf({ expression, tolerance, stated, reading }: Figure): Range | undefined {
  if (reading) {
    const { limit, value, upTo, tolerance: around } = reading;
    if (limit === "below") return undefined;
    return limit === "between" && upTo ? readRange(upTo.text) : readRange(joined(value, around));
  }
  const value = stated ?? expression;
  return value && readRange(joined(value, stated ? undefined : tolerance));
}

function joined(value: { text: string }, tolerance: { text: string } | undefined): string {
  return tolerance ? `${value.text} ± ${tolerance.text}` : value.text;
}

function number(text: string): number {
  return Number(text.replace(",", "."));
}
