/** A sentence of a step tells of an act instead of asking for it. */
import type { Sentence, TextBlock } from "../model/prose.ts";
import type { Check, Finding } from "./check.ts";
import { tellingIn } from "./wording/telling.ts";

export const check: Check = {
  meta: {
    code: "not-imperative",
    summary: "A step tells what should be done instead of asking for it (English).",
    severity: "hint",
    source: "ASD-STE100, rule 5.3: instructions in the imperative",
    late: true,
    tags: ["wording"],
  },
  *piece(piece, guide) {
    if (guide.language !== "en") return;
    for (const block of piece.prose) {
      if (!block.instructs) continue;
      for (const sentence of block.sentences) {
        const telling = tellingIn(sentence.words);
        if (telling) yield tells(block, sentence, telling);
      }
    }
  },
};

function tells(
  block: TextBlock,
  { words }: Sentence,
  { from, to }: { readonly from: number; readonly to: number },
): Finding {
  const span = { start: words[from]!.start, end: words[to - 1]!.end };
  const said = block.at(span);
  return {
    at: { piece: block.piece, span },
    message: () =>
      `"${said}" tells what is done, so the builder may wonder who does it, and when. Ask for it: begin the sentence with the verb ("Solder …", "Cut …").`,
  };
}
