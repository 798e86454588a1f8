/** Small tools for writing HTML. */
import { UNIT_SYMBOLS } from "../quantity/unitSymbols.ts";

const ENTITIES: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

/** The text as content or as a quoted attribute. */
export function escapeHtml(text: string): string {
  return text.replace(/[&<>"']/g, (sign) => ENTITIES[sign]!);
}

/** A number, a space and what may be a unit. */
const AMOUNT = /(?<=\d) (?=([\p{L}%°][\p{L}·]*(?:\/\p{L}+|[²³])?)(?![\p{L}\p{N}]))/gu;

/** The text with no line end between a number and its unit; as long as it was. */
export function keepUnits(text: string): string {
  if (!/\d /.test(text)) return text;
  return text.replace(AMOUNT, (space, unit: string) => (UNIT_SYMBOLS.has(unit) ? "\u00a0" : space));
}

/** A step's number as the end of an id: `4.2` is `4-2`. */
export function numberId(number: string): string {
  return number.replaceAll(".", "-");
}

/** A heading's title as the end of an id, as hosting sites make it. */
export function titleId(title: string): string {
  return title
    .toLowerCase()
    .replace(/[^\p{L}\p{N}\s_-]/gu, "")
    .trim()
    .replace(/\s/g, "-");
}

/** Whether the address is the picture itself, which the author has written into the text. */
export function isWrittenOut(url: string): boolean {
  return /^data:image\/(?:png|jpeg|gif|webp|avif|svg\+xml)[;,]/i.test(url);
}
