/** Finds marks printed on parts that a text names: `marked 104`, `mit dem Aufdruck 4n7`. */
import type { Span } from "../../text/span.ts";
import { StemList, type Word } from "../../text/stems.ts";
import { AND, MARK_FILLERS, MARKED_WORDS } from "../../trade/marking/colourWords.ts";
import type { Worded } from "./worded.ts";

export interface PrintedMark extends Span {
  readonly text: string;
}

const MARKED = new StemList<true>(MARKED_WORDS.map((pattern) => [pattern, true]));
/** Words between marks of which each may stand on the part. */
const OR = new Set(["or", "oder", "ou", "of", "o"]);
const UNIT = /^(?:[pnuµmkKM]?(?:F|H|Ω|Hz)|[kKM]?Ohms?|ohms?|V|W|A|mm|%)$/;
/** Single figures tell places, not values: `the hole marked 1`. */
const MARK = /^(?=.*\d)[\d.,\p{L}µ]{2,6}$/u;

/** The marks that the text names, each with a unit that stands behind it. */
export function printedMarks(worded: Worded): readonly PrintedMark[] {
  const marks: PrintedMark[] = [];
  const { words } = worded;
  for (const { to } of MARKED.find(words)) {
    let at = to;
    while (at < words.length && at < to + 3 && MARK_FILLERS.has(words[at]!.lower)) at++;
    while (at < words.length) {
      const mark = markAt(worded, at);
      if (!mark) break;
      marks.push(mark);
      at += mark.words;
      const joiner = words[at];
      if (joiner && (AND.has(joiner.lower) || OR.has(joiner.lower))) at++;
    }
  }
  return marks;
}

function markAt(worded: Worded, at: number): (PrintedMark & { words: number }) | undefined {
  const word = worded.words[at]!;
  if (!MARK.test(textOf(worded, word, word))) return undefined;
  const next = worded.words[at + 1];
  const unit = next && UNIT.test(textOf(worded, next, next)) ? next : undefined;
  const last = unit ?? word;
  return {
    start: word.start,
    end: last.end,
    text: textOf(worded, word, last),
    words: unit ? 2 : 1,
  };
}

function textOf({ text, start }: Worded, first: Word, last: Word): string {
  return text.slice(first.start - start, last.end - start);
}
