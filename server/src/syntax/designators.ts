/**
 * Designators and their ranges, as parts lists and guides write them.
 * Forms after ASME Y14.44-2008 2.1.3 (class letters, number, suffix letter) and common practice.
 */

/** A designator taken apart: `R17A` is class `R`, number 17, suffix `A`. */
export interface Designator {
  /** Class letters as written. */
  readonly letters: string;
  readonly digits: string;
  readonly suffix: string;
}

/**
 * The letters may hold digits and dashes (`BCD-IN1`, `Conn_01x04`), but no dash behind a number and
 * its suffix: `R1-R4` and `U3A-U3D` are ranges.
 */
const DESIGNATOR = /^(\p{L}(?:(?:[\p{L}\d_$]|(?<!\d\p{L}?)-)*[\p{L}_$])?)(\d+)(\p{L}?)$/u;

/** The common case, a good deal faster. */
const PLAIN = /^([A-Z]{1,5})(\d+)([A-Z]?)$/;

/** No designator is longer; the expression would take long, or all the stack, for a long text. */
const MAX_LENGTH = 64;

/** Takes a designator apart, or gives undefined when the text is none. */
export function readDesignator(text: string): Designator | undefined {
  if (text.length > MAX_LENGTH) return undefined;
  const match = PLAIN.exec(text) ?? DESIGNATOR.exec(text);
  if (!match) return undefined;
  return { letters: match[1]!, digits: match[2]!, suffix: match[3]! };
}

/** The form under which a designator is looked up: letter case and inner spaces do not matter. */
export function designatorKey(text: string): string {
  return PLAIN_KEY.test(text) ? text : text.trim().toUpperCase();
}

/** Nearly all are written so, and asking costs less than making them so. */
const PLAIN_KEY = /^[A-Z\d]*$/;

/** Class letters of a designator (`R` of R17); of a name that is none, the name. */
export function lettersOfName(name: string): string {
  return readDesignator(name)?.letters ?? name;
}

/**
 * The designators of a range such as R1–R4, U3A–U3D, or C6–8 (`to` without letters).
 * Leading zeros are kept (R01–R03). Gives undefined when the ends do not belong together or run
 * backwards, and stops at `limit` entries so that R1–R999999999 costs nothing; the caller compares
 * `size` with the limit to report it.
 */
export function expandRange(
  from: Designator,
  to: Designator | string,
  limit: number,
): { names: string[]; size: number } | undefined {
  const end: Designator =
    typeof to === "string" ? { letters: from.letters, digits: to, suffix: "" } : to;
  if (end.letters.toUpperCase() !== from.letters.toUpperCase()) return undefined;
  if (from.suffix && end.suffix && Number(from.digits) === Number(end.digits)) {
    return expandSuffixes(from, end, limit);
  }
  if (from.suffix || end.suffix) return undefined;
  const first = Number(from.digits);
  const last = Number(end.digits);
  if (!Number.isSafeInteger(first) || !Number.isSafeInteger(last) || last < first) return undefined;
  const width = from.digits.startsWith("0") ? from.digits.length : 0;
  const size = last - first + 1;
  const names: string[] = [];
  for (let n = first; n <= last && names.length < limit; n++) {
    names.push(from.letters + String(n).padStart(width, "0"));
  }
  return { names, size };
}

function expandSuffixes(from: Designator, to: Designator, limit: number) {
  const first = from.suffix.toUpperCase().charCodeAt(0);
  const last = to.suffix.toUpperCase().charCodeAt(0);
  if (last < first) return undefined;
  const names: string[] = [];
  for (let code = first; code <= last && names.length < limit; code++) {
    names.push(from.letters + from.digits + String.fromCharCode(code));
  }
  return { names, size: last - first + 1 };
}
