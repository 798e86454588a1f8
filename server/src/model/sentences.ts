/** Cuts a block of text into sentences, whatever the language. */
import type { Word } from "../text/stems.ts";
import type { Sentence } from "./prose.ts";

/** A full stop, question or exclamation mark before a space, closing quotes and brackets between. */
const STOP = /[.!?…]["'”’»)\]*_]*(?=\s|\uFFFC|$)/gu;

/** Short forms whose point ends no sentence, in the five languages of the word lists. */
const SHORT_FORMS = new Set(
  "approx bijv bspw bzw ca cf dgl eig env evtl ggf incl inkl resp sog vgl vs zus".split(" "),
);

/** Short forms before a number; elsewhere they are words that may end a sentence (`10 min.`). */
const NUMBERED = new Set(
  "abb art fig figs max min mind no nos nr nro núm num p pag pág par pos pp tab typ vol".split(" "),
);

/** The sentences of `text`, whose words are `words`; `offset` is where the text begins. */
export function readSentences(text: string, words: readonly Word[], offset: number): Sentence[] {
  const sentences: Sentence[] = [];
  let first = 0;
  const close = (end: number, past: number) => {
    const own = words.slice(first, past);
    if (own.length > 0) sentences.push({ start: own[0]!.start, end, words: own });
    first = past;
  };
  let past = 0;
  for (const match of text.matchAll(STOP)) {
    const at = offset + match.index;
    while (past < words.length && words[past]!.start < at) past++;
    if (past > first && endsSentence(text, match, words, past, offset)) {
      close(at + match[0].length, past);
    }
  }
  close(offset + text.trimEnd().length, words.length);
  return sentences;
}

/** Whether the stop behind `words[past - 1]` ends a sentence. */
function endsSentence(
  text: string,
  { 0: stop, index }: RegExpExecArray,
  words: readonly Word[],
  past: number,
  offset: number,
): boolean {
  const next = words[past];
  if (!next) return true;
  const following = textOf(text, next, offset);
  if (/^\p{Ll}/u.test(following)) return false;
  if (stop[0] !== ".") return true;
  const last = words[past - 1]!;
  // Behind a mark or a bracket no short form is meant.
  if (last.end !== offset + index) return true;
  if (SHORT_FORMS.has(last.lower)) return false;
  if (NUMBERED.has(last.lower) && /^\p{N}/u.test(following)) return false;
  return !isInitials(text, words, past, offset);
}

/** One small letter or letters parted by points: `e.g.`, `z. B.`, `U.S.` */
function isInitials(text: string, words: readonly Word[], past: number, offset: number): boolean {
  const last = words[past - 1]!;
  if (/^(?:\p{Ll}|\p{L}(?:\.\p{L})+)$/u.test(textOf(text, last, offset))) return true;
  const before = words[past - 2];
  if (before?.lower.length !== 1 || last.lower.length !== 1) return false;
  return /^\.\s*$/.test(text.slice(before.end - offset, last.start - offset));
}

function textOf(text: string, { start, end }: Word, offset: number): string {
  return text.slice(start - offset, end - offset);
}
