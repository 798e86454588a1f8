/** Numbers and units in prose that are not written as the SI writes them. */
import type { TextBlock } from "../../model/prose.ts";
import { CLEAR_UNITS, LETTER_UNITS, MISSPELT_UNITS } from "../../quantity/unitSymbols.ts";
import type { Span } from "../../text/span.ts";

/** What is wrong with a number and its unit, and how it should read. */
export interface LooseUnit {
  /** In the piece. */
  readonly span: Span;
  readonly kind: "space" | "symbol" | "hyphen" | "zero" | "degree";
  readonly right: string;
}

/**
 * A number, what parts it from the next sign, and what may be a unit. Nothing may stand before that
 * makes a longer word of it: type numbers, value codes, dimensions (`3x10`), rails as the board
 * prints them (`+5V`). Nothing may stand behind that does so either.
 */
const LOOSE =
  /(?<![\p{L}\p{N}.,'’+\-−/×*·_#&])(?<number>[.,]?\d+(?:[.,]\d+)*)(?<gap>[ -]?)(?<unit>° C|[\p{L}%°][\p{L}·]*(?:\/\p{L}+|[²³])?)(?![\p{L}\p{N}_·]|[/-][\p{L}\p{N}])/gu;

/** Words before a number and a letter that name something, not a quantity: `pin 2A`, `marked 5V`. */
const NAMING = new Set(
  (
    "pin pins pad pads step fig figure table type class port row version sheet page note line marked labelled labeled " +
    "stift stifte bild abb tabelle schritt klasse typ anschluss zeile seite beschriftet " +
    "broche figure tableau étape ligne classe marqué marquée pen stap tabel figuur pagina regel klasse gemerkt " +
    "patilla paso tabla figura página línea tipo clase marcado marcada"
  ).split(" "),
);

/** The hyphen of `10-kΩ resistor` is English; elsewhere other rules hold. */
export function looseUnits(block: TextBlock, isEnglish: boolean): LooseUnit[] {
  const found: LooseUnit[] = [];
  const { text } = block;
  // Most blocks hold no digit.
  if (!/\d/.test(text)) return found;
  for (const { 0: whole, index, groups } of text.matchAll(LOOSE)) {
    const { number, gap, unit } = groups as Record<"number" | "gap" | "unit", string>;
    const loose = judge(number, gap, unit);
    if (!loose || (loose.kind === "hyphen" && !isEnglish)) continue;
    if (LETTER_UNITS.has(unit) && isNamed(text, index)) continue;
    const start = block.fact.span.start + index;
    found.push({ ...loose, span: { start, end: start + whole.length } });
  }
  return found;
}

/** The text with a space before each unit that lacks it. */
export function withSpaces(text: string): string {
  return text.replace(LOOSE, (whole, number: string, gap: string, unit: string) => {
    const loose = judge(number, gap, unit);
    return loose?.kind === "space" ? loose.right : whole;
  });
}

function judge(number: string, gap: string, unit: string): Omit<LooseUnit, "span"> | undefined {
  const proper = MISSPELT_UNITS.get(unit);
  if (proper) return { kind: "symbol", right: `${number} ${proper}` };
  if (unit === "° C") return { kind: "degree", right: `${number} °C` };
  if (!CLEAR_UNITS.has(unit) && !LETTER_UNITS.has(unit)) return undefined;
  const right = `${number} ${unit}`;
  if (/^[.,]/.test(number)) return { kind: "zero", right: `0${right}` };
  if (gap === "-") return unit === "A" ? undefined : { kind: "hyphen", right };
  return gap === "" ? { kind: "space", right } : undefined;
}

function isNamed(text: string, at: number): boolean {
  const before = /(\p{L}+)[.:]?\s*$/u.exec(text.slice(Math.max(0, at - 20), at));
  return before !== null && NAMING.has(before[1]!.toLowerCase());
}
