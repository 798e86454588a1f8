/** Tells which quotes are hazard notes: `> **SIGNAL: hazard.** …`, or one of GitHub's alerts. */
import type { Blockquote } from "mdast";
import type { Span } from "../text/span.ts";
import type { NoteFact } from "./facts.ts";
import { plainText, spanOf, startOf } from "./nodes.ts";
import { readAlert, readSignal } from "./signalWords.ts";

/** The note that the quote is, if it is one. `text` is what the quote's offsets count in. */
export function readHazardNote(quote: Blockquote, text: string): NoteFact | undefined {
  const first = quote.children[0];
  if (first?.type !== "paragraph") return undefined;
  const span = spanOf(quote);
  const start = startOf(first);
  const alert = readAlert(text.slice(start, start + 20));
  if (alert) {
    const opening = { start, end: text.indexOf("]", start) + 1 };
    return { kind: "note", span, signal: alert, hazard: "", opening, alert: true };
  }
  const strong = first.children[0];
  if (strong?.type !== "strong") return undefined;
  const read = readSignal(plainText(strong));
  if (!read) return undefined;
  const { signal, hazard } = read;
  const opening = spanOf(strong);
  const word = wordIn(text, opening, read.word);
  return { kind: "note", span, signal, ...(word && { word }), hazard, opening, alert: false };
}

function wordIn(text: string, { start, end }: Span, word: string): NoteFact["word"] {
  const at = text.slice(start, end).indexOf(word);
  return at < 0
    ? undefined
    : { text: word, span: { start: start + at, end: start + at + word.length } };
}
