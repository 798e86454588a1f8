/** Cuts a text into words, whatever the language. */
import type { Word } from "../text/stems.ts";

/**
 * Letters and digits in a row. Points and commas between digits (`2.5`), points between letters
 * (`e.g`) and an apostrophe before a short ending (`don't`) belong to the word; what an apostrophe
 * or a hyphen joins else are words of their own (`l'étain`, `flat-nose`).
 */
const WORD =
  /[\p{L}\p{N}][\p{L}\p{N}\p{M}]*(?:(?:(?<=\p{N})[.,](?=\p{N})|(?<=\p{L})\.(?=\p{L})|['’](?=\p{L}{1,2}(?![\p{L}\p{N}])))[\p{L}\p{N}\p{M}]+)*/gu;

const JOINING = new Set(["-", "‐", "‑", "'", "’"]);

/** The words of `text`; `offset` is added to their spans. */
export function readWords(text: string, offset: number): Word[] {
  const words: Word[] = [];
  let before = -1;
  for (const match of text.matchAll(WORD)) {
    const [word] = match;
    const { index } = match;
    const joined = index === before + 1 && before > 0 && JOINING.has(text[before]!);
    before = index + word.length;
    words.push({
      start: offset + index,
      end: offset + before,
      lower: word.toLowerCase().normalize("NFC"),
      joined,
    });
  }
  return words;
}
