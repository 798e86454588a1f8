/** A word is written twice in a row. */
import type { TextBlock } from "../model/prose.ts";
import type { Language } from "../text/language.ts";
import type { Word } from "../text/stems.ts";
import { colourOfWord } from "../trade/marking/colourWords.ts";
import type { Check, Finding } from "./check.ts";
import { replace, textAt } from "./places.ts";
import { DOUBLED } from "./wording/doubledWords.ts";

export const check: Check = {
  meta: {
    code: "repeated-word",
    summary: "A word is written twice in a row.",
    severity: "information",
    source: "common practice",
    late: true,
    tags: ["wording"],
  },
  *piece(piece, guide) {
    const { language } = guide;
    if (!language) return;
    for (const block of piece.prose) {
      let before: Word | undefined;
      for (const word of block.words) {
        if (before?.lower === word.lower && isSlip(before, word, block, language)) {
          yield repeated(before, word, block);
        }
        before = word;
      }
    }
  },
};

function isSlip(first: Word, second: Word, block: TextBlock, language: Language): boolean {
  const { lower } = second;
  if (!/^\p{L}[\p{L}\p{M}]+$/u.test(lower)) return false;
  // Rings of resistors may be alike: "brown black black gold".
  if (DOUBLED[language].has(lower) || colourOfWord(lower, language)) return false;
  // Only space between: no mark, no line break of HTML, no emphasis that wants the second.
  return /^\s[\s>]*$/.test(textAt(block.piece, { start: first.end, end: second.start }));
}

function repeated(first: Word, second: Word, block: TextBlock): Finding {
  const span = { start: first.start, end: second.end };
  const word = block.at(first);
  return {
    at: { piece: block.piece, span },
    message: () =>
      `"${word}" is written twice in a row. The reader stumbles over it: delete one, or write what was meant.`,
    fixes: [() => replace(block.piece, span, word, `Delete the second ${word}`)],
  };
}
