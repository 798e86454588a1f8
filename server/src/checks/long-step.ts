/** A sentence of a step is longer than a reader at the bench takes in. */
import type { Sentence, TextBlock } from "../model/prose.ts";
import type { Check, Finding } from "./check.ts";
import { limitOf } from "./limits.ts";
import { countWords } from "./wording/countWords.ts";

export const check: Check = {
  meta: {
    code: "long-step",
    summary: "A sentence of a step has too many words.",
    severity: "information",
    source: "ASD-STE100, rule 5.1: at most 20 words in a sentence of a procedure",
    late: true,
    tags: ["wording"],
    limit: { default: 20, summary: "Most words in a sentence of a step." },
  },
  *piece(piece, guide) {
    if (!guide.language) return;
    const most = limitOf(check.meta, guide);
    for (const block of piece.prose) {
      if (!block.instructs) continue;
      for (const sentence of block.sentences) {
        // The count never exceeds words and runs together.
        if (sentence.words.length + block.fact.runs.length <= most) continue;
        const words = countWords(sentence, block);
        if (words > most) yield tooLong(block, sentence, words, most);
      }
    }
  },
};

function tooLong(block: TextBlock, { start, end }: Sentence, words: number, most: number): Finding {
  return {
    at: { piece: block.piece, span: { start, end } },
    message: () =>
      `This sentence of step ${block.step!.number} has ${words} words; more than ${most} are hard to keep in mind with the iron in hand. Split it: one thing in each sentence.`,
  };
}
