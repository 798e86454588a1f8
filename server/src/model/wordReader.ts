/**
 * Cuts a text into words, whatever the language. A word is letters and digits in a row. Points and
 * commas between digits (`2.5`), points between letters (`e.g`) and an apostrophe before a short
 * ending (`don't`) belong to it; what else an apostrophe or a hyphen joins are words of their own
 * (`l'étain`, `s'il`, `flat-nose`).
 */
import type { Word } from "../text/stems.ts";

/** The words of `text`; `offset` is added to their spans. */
export function readWords(text: string, offset: number): Word[] {
  const words: Word[] = [];
  // Written in capitals or not, most texts need no composing.
  const lower = PLAIN.test(text) ? text.toLowerCase() : undefined;
  let at = 0;
  let before = -2;
  while (at < text.length) {
    if (kindAt(text, at) === Kind.other) {
      at++;
      continue;
    }
    const end = endOfWord(text, at);
    const joined = before === at - 1 && JOINING.test(text[before]!);
    words.push({
      start: offset + at,
      end: offset + end,
      lower: lower?.slice(at, end) ?? text.slice(at, end).toLowerCase().normalize("NFC"),
      joined,
    });
    before = end;
    at = end;
  }
  return words;
}

const PLAIN = /^[\0-\x7f\uFFFC]*$/;
const JOINING = /[-‐‑'’]/;

const Kind = { other: 0, letter: 1, digit: 2 } as const;
type Kind = (typeof Kind)[keyof typeof Kind];

/** Kinds of the characters of ASCII. */
const ASCII: readonly Kind[] = Array.from({ length: 128 }, (_, code) =>
  kindOf(String.fromCharCode(code)),
);

function kindOf(character: string): Kind {
  if (/[\p{L}\p{M}]/u.test(character)) return Kind.letter;
  return /\p{N}/u.test(character) ? Kind.digit : Kind.other;
}

function kindAt(text: string, at: number): Kind {
  const code = text.charCodeAt(at);
  if (code < 128) return ASCII[code]!;
  // Halves of a pair go by the character they make.
  const isLow = code >= 0xdc00 && code < 0xe000;
  return kindOf(String.fromCodePoint(text.codePointAt(isLow ? at - 1 : at)!));
}

function endOfWord(text: string, start: number): number {
  let at = start + 1;
  while (at < text.length) {
    if (kindAt(text, at) !== Kind.other || goesOn(text, start, at)) at++;
    else break;
  }
  return at;
}

/**
 * Whether the sign at `at`, which is neither letter nor digit, stands inside the word that begins at
 * `start`. A French word that has lost its vowel is one of its own: `l'or`, `s'il`, `jusqu'à`.
 */
function goesOn(text: string, start: number, at: number): boolean {
  const sign = text[at]!;
  if (at + 1 >= text.length) return false;
  const next = kindAt(text, at + 1);
  if (next === Kind.other) return false;
  const before = kindAt(text, at - 1);
  if (sign === ".") return before === next;
  if (sign === ",") return before === Kind.digit && next === Kind.digit;
  if ((sign !== "'" && sign !== "’") || next !== Kind.letter) return false;
  const elided = at === start + 1 || /qu$/i.test(text.slice(Math.max(start, at - 2), at));
  return !elided && isShortEnding(text, at + 1);
}

/** One or two letters up to the end of the word. */
function isShortEnding(text: string, at: number): boolean {
  for (let i = at; i < at + 3; i++) {
    if (i >= text.length || kindAt(text, i) === Kind.other) return true;
  }
  return false;
}
