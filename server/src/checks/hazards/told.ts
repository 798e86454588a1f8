/** A sentence of a block of text, as the lists of acts and hazards are held against it. */
import type { Sentence, TextBlock } from "../../model/prose.ts";
import type { Word } from "../../text/stems.ts";
import type { ToldSentence } from "../../trade/acts/lexicon.ts";

export class BlockSentence implements ToldSentence {
  readonly words: readonly Word[];
  readonly #sentence: Sentence;
  readonly #block: TextBlock;

  /** `words`: those of the sentence, or some of them. */
  constructor(block: TextBlock, sentence: Sentence, words = sentence.words) {
    this.#block = block;
    this.#sentence = sentence;
    this.words = words;
  }

  between(a: Word, b: Word): string {
    const { start } = this.#block.fact.span;
    return this.#block.text.slice(a.end - start, b.start - start);
  }

  isCapital({ start }: Word): boolean {
    return /\p{Lu}/u.test(this.#block.text[start - this.#block.fact.span.start]!);
  }

  get hasLength(): boolean {
    const { start, end } = this.#sentence;
    return this.#block.piece.marks.some(
      ({ mark }) =>
        mark.span.start >= start &&
        mark.span.end <= end + 1 &&
        mark.items.some((item) => item.kind === "amount" && item.amount.kind === "length"),
    );
  }
}
