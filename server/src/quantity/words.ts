/** Cuts a value text into words that keep their place in it. */

export interface Word {
  readonly text: string;
  readonly start: number;
  readonly end: number;
}

const SPACES = /[\u00a0\u2000-\u200a\u202f\u205f\u3000\t\r\n]/g;
/** Figures in groups of three, parted by a no-break or thin space (ISO 80000-1). */
const GROUP_SPACE = /(?<=\d)[\u00a0\u2007\u2009\u202f](?=\d{3}(?!\d))/g;

const PLAIN = /^[ -~]*$/;

/** The text with look-alike characters folded, each in its place: offsets stay valid. */
export function foldText(text: string): string {
  if (PLAIN.test(text)) return text;
  return text
    .replace(GROUP_SPACE, "'")
    .replace(SPACES, " ")
    .replace(/[\u00b5\u03bc]/g, "u")
    .replace(/\u2126/g, "Ω")
    .replace(/[\u2212\u2010\u2011]/g, "-")
    .replace(/\u2044/g, "/");
}

/** Words of a folded text, without the punctuation between them. */
export function splitWords(text: string): readonly Word[] {
  const words: Word[] = [];
  let start = 0;
  for (let i = 0; i <= text.length; i++) {
    if (i < text.length && !isSeparator(text, i)) continue;
    let end = i;
    while (end > start && (text[end - 1] === "." || text[end - 1] === "-")) end--;
    if (end > start) words.push({ text: text.slice(start, end), start, end });
    start = i + 1;
  }
  return words;
}

const SEPARATORS = new Set(' ;:()[]{}|@=~*&"<>');

function isSeparator(text: string, i: number): boolean {
  const char = text[i]!;
  if (SEPARATORS.has(char)) return true;
  const betweenDigits = isDigit(text[i - 1]) && isDigit(text[i + 1]);
  if (char === "," || char === "_") return !betweenDigits;
  if (char !== "/") return false;
  // 1/4 W is a fraction, 225/50V a value and its rating.
  return !(betweenDigits && text[i - 1] === "1" && !isDigit(text[i - 2]));
}

function isDigit(char: string | undefined): boolean {
  return char !== undefined && char >= "0" && char <= "9";
}
