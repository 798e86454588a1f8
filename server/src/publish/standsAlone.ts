/** Whether a mark is part of a sentence, or stands between sentences: then it is shown in parentheses. */

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
