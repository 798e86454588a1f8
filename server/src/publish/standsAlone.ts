/**
 * How a mark stands in the text around it: part of a sentence or between sentences, where it is shown in
 * parentheses; and right behind another one, from which it is then parted.
 */

const GAP = String.raw`[ \t]*(?:(?:\r\n|\n|\r)[ \t]*)?`;
/** Marks, each behind a gap, and a gap. */
const MARKS = String.raw`(?:${GAP}\[[^[\]]*\])*${GAP}$`;

const BEHIND_SENTENCE = new RegExp(`[.!?]["”“»)]?${MARKS}`);
/** The full stop of `1.` ends no sentence. */
const BEHIND_NUMBER = new RegExp(String.raw`(?:^|[\r\n])[ \t>]*\d{1,9}\.${MARKS}`);

/** So much of what stands before is looked at. */
const LOOKED_AT = 300;

/** Whether what begins at the offset stands behind a sentence, or behind marks that do. */
export function standsAlone(source: string, offset: number): boolean {
  const before = source.slice(Math.max(0, offset - LOOKED_AT), offset);
  return BEHIND_SENTENCE.test(before) && !BEHIND_NUMBER.test(before);
}

/**
 * Whether another mark or figure ends where one begins: without a space `[R1 = 4k7][R2]` would read
 * 4k7R2.
 */
export function touchesAnother(source: string, offset: number): boolean {
  const before = source[offset - 1];
  return before === "]" || before === "}";
}
