/**
 * How many words a sentence has, after the counting rules of ASD-STE100: a hyphenated word is one, a
 * number with its unit is one, text in round brackets is a sentence of its own. A mark, a figure or
 * code inside the sentence is one word too.
 */
import type { Sentence, TextBlock } from "../../model/prose.ts";
import { UNIT_SYMBOLS } from "../../quantity/unitSymbols.ts";
import type { TextRun } from "../../syntax/facts.ts";
import type { Span } from "../../text/span.ts";

/** Words of the sentence, or of a bracket in it if that has more. */
export function countWords(sentence: Sentence, block: TextBlock): number {
  const items = itemsOf(sentence, block);
  if (!block.at(sentence).includes("(")) return items.length;
  let outside = 0;
  let inside = 0;
  let most = 0;
  let isInside = false;
  let at = sentence.start;
  for (const item of items) {
    for (const sign of block.at({ start: at, end: item.start })) {
      if (sign === "(" && !isInside) [isInside, inside] = [true, 0];
      else if (sign === ")") isInside = false;
    }
    at = item.end;
    if (isInside) most = Math.max(most, ++inside);
    else outside++;
  }
  return Math.max(outside, most);
}

/** What counts as a word, in order: words, and what stands for one. */
function itemsOf({ start, words }: Sentence, block: TextBlock): Span[] {
  const items: Span[] = words.filter(
    (word, i) => !word.joined && !isUnitOf(words[i - 1], word, block),
  );
  const { runs } = block.fact;
  // Marks behind the last word stand beside the sentence.
  const end = words.at(-1)!.start;
  for (let i = firstFrom(runs, start); i < runs.length && runs[i]!.span.start < end; i++) {
    if (runs[i]!.kind !== "text") items.push(runs[i]!.span);
  }
  return items.sort((a, b) => a.start - b.start);
}

/** Index of the first run that starts at or behind `offset`. */
function firstFrom(runs: readonly TextRun[], offset: number): number {
  let from = 0;
  let to = runs.length;
  while (from < to) {
    const middle = (from + to) >> 1;
    if (runs[middle]!.span.start < offset) from = middle + 1;
    else to = middle;
  }
  return from;
}

function isUnitOf(number: Span | undefined, word: Span, block: TextBlock): boolean {
  return (
    number !== undefined && /^\d[\d.,]*$/.test(block.at(number)) && UNIT_SYMBOLS.has(block.at(word))
  );
}
