/** Reads `6 × M3x10` and `820 mm × CuL 1.0`: how much of a parts-list line is used up. */
import type { Amount, AmountItem, SyntaxProblem } from "../dialect.ts";
import type { MappedText } from "./mappedText.ts";

/** How many of each unit make a metre; the inch is 25.4 mm by definition. */
const PER_METRE: ReadonlyMap<string, number> = new Map([
  ["mm", 1000],
  ["cm", 100],
  ["dm", 10],
  ["m", 1],
  ["in", 1 / 0.0254],
  ["inch", 1 / 0.0254],
  ["inches", 1 / 0.0254],
  ["ft", 1 / 0.3048],
]);

const COUNT = /^(\d{1,9})\s*([×✕xX*])\s*(?=\S)/;
const LENGTH = /^(\d{1,9}(?:[.,]\d{1,9})?)\s*(mm|cm|dm|m|in|inch|inches|ft)\s*([×✕xX*])\s*(?=\S)/;
/** A bare measure, as in `2 × 10 mm`: a size of something, no line of a list. */
const MEASURE = /^\d+(?:[.,]\d+)?\s*(?:mm|cm|dm|m|in|V|A|W|Hz|%|°C)?$/;

/** Whether a text opens with a length that a decimal comma may have cut: `1,5 m × CuL 0.8`. */
export function startsWithLength(text: string): boolean {
  return LENGTH.test(text);
}

/** Whether a text opens with a count or a length and its sign. */
export function startsWithAmount(text: string): boolean {
  return COUNT.test(text) || LENGTH.test(text);
}

/** A problem for `6*M3x10`, whose star a plain renderer may take for emphasis. */
export function tightStar(text: MappedText): SyntaxProblem | undefined {
  const match = /^\d[^*×✕]*?(\s?\*\s?)/.exec(text.text);
  if (!match || match[1] === " * ") return undefined;
  const span = text.span(match[0].length - match[1]!.length, match[0].length);
  return {
    span,
    message:
      "A plain Markdown renderer may take this * for emphasis. Write × with a space on each side.",
    suggestion: { title: "Write ×", span, text: " × " },
  };
}

/** An amount of something the list names without designators, or undefined. */
export function readAmount(text: MappedText): AmountItem | undefined {
  const length = LENGTH.exec(text.text);
  if (length) {
    const metres = Number(length[1]!.replace(",", ".")) / PER_METRE.get(length[2]!)!;
    const written = length[0].slice(0, length[0].lastIndexOf(length[3]!)).trim();
    return amountOf(text, length[0].length, { kind: "length", metres, text: written });
  }
  const count = COUNT.exec(text.text);
  if (!count || !opensKey(text.text, count[0])) return undefined;
  return amountOf(text, count[0].length, { kind: "count", count: Number(count[1]) });
}

/** `2x10` and `2 × 10 mm` are sizes; `4 × 1N4148` and `2x LED` count parts. */
function opensKey(text: string, head: string): boolean {
  const key = text.slice(head.length);
  if (!/\p{L}/u.test(key) || MEASURE.test(key)) return false;
  return /^\p{L}/u.test(key) || /\s$/.test(head);
}

function amountOf(text: MappedText, keyAt: number, amount: Amount): AmountItem {
  const key = text.slice(keyAt).trim();
  return { kind: "amount", span: text.span(), amount, key: key.text, keySpan: key.span() };
}
