/** A text with its words, as the readers of bands and marks take it. */
import type { TextBlock } from "../../model/prose.ts";
import type { Word } from "../../text/stems.ts";

/** Offsets of words count from `start` on. */
export interface Worded {
  readonly start: number;
  readonly text: string;
  readonly words: readonly Word[];
}

export function worded(block: TextBlock): Worded {
  return { start: block.fact.span.start, text: block.text, words: block.words };
}
