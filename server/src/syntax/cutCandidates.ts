/** Places where a text may be cut into pieces: headings and ordered-list markers at column 0. */
import { endOfLine, type TextSource } from "../text/textSource.ts";

/**
 * A heading or list marker. A marker that opens a second list on its line is none: whether the
 * inner list counts can depend on the paragraph before.
 */
const CANDIDATE =
  /^(?:#{1,6}(?=[ \t]|$)|\d{1,9}[.)](?=[ \t]|$)(?![ \t]+(?:[-*+]|\d{1,9}[.)])(?:[ \t]|$)))[ \t]*/;

export interface Candidate {
  readonly start: number;
  /** Its sign, with a letter for the words that follow it. */
  readonly opening: string;
  readonly heading: boolean;
}

/** Candidates for a cut behind `from`, in order. */
export function* candidates(text: TextSource, from: number): Generator<Candidate, void, void> {
  let line = endOfLine(text, from);
  while (line < text.length) {
    const start = line + (text.charCodeAt(line) === 13 && text.charCodeAt(line + 1) === 10 ? 2 : 1);
    const lineEnd = endOfLine(text, start);
    const code = text.charCodeAt(start);
    if (code === 35 || (code >= 48 && code <= 57)) {
      const sign = CANDIDATE.exec(text.slice(start, lineEnd))?.[0];
      if (sign !== undefined) {
        const opening = start + sign.length < lineEnd ? `${sign}x` : sign;
        yield { start, opening, heading: code === 35 };
      }
    }
    line = lineEnd;
  }
}
