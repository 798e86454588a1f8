/** The fix that writes a tool or consumable into the step that names it. */
import type { Naming } from "../../model/tools/namedThings.ts";
import type { Fix } from "../check.ts";
import { replace } from "../places.ts";

/** Puts the mark behind the sentence that names the thing; its spelling is that of the sentence. */
export function addMark({ piece, span, text }: Naming, role: "tool" | "own"): Fix | undefined {
  const sentence = piece.prose
    .flatMap((block) => block.sentences)
    .find(({ start, end }) => start <= span.start && span.end <= end);
  if (!sentence) return undefined;
  const at = { start: sentence.end, end: sentence.end };
  const mark = `[${role}: ${text.replace(/\s+/g, " ")}]`;
  return replace(piece, at, ` ${mark}`, `Add ${mark}`);
}
