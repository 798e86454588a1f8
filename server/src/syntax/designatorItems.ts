/** The items of a cell that lists designators: between commas, in brackets, parted by space, ranges. */
import type { Span } from "../text/span.ts";
import { type Designator, readDesignator } from "./designators.ts";
import { ListedNames, nameOf, type ReadName, type ReadProblem } from "./listedNames.ts";

/** Turns offsets in the cell's text into a place elsewhere. */
export type Place = (start: number, end: number) => Span;

export const within: Place = (start, end) => ({ start, end });

export interface DesignatorList {
  readonly names: readonly ReadName[];
  /** How many of the names are words without a number: ALARM, !RESET!. */
  readonly words: number;
  /** Texts that are no designators, without the brackets round them: offsets in the cell's text. */
  readonly remarks: readonly Span[];
  /** Items with nothing between their commas. */
  readonly empty: number;
  /** Ends with a comma, so that the list goes on in the next row. */
  readonly goesOn: boolean;
  readonly problems: readonly ReadProblem[];
}

const SEPARATOR = /[,;&\n\r，、；]|\s(?:and|und|et|y|en|e|\+)\s|\s[/|]\s(?=\p{L})/giu;
/** One range, plainly written. */
const PLAIN_RANGE = /^([A-Z]{1,5})([1-9]\d{0,5})[-–]([A-Z]{1,5})?([1-9]\d{0,5})$/;
const SIGN = "[-\\u2010-\\u2014\\u2212~～…]|\\.{2,3}";
const SIGN_WORD = "to|through|thru|bis|tot|t/m|à|a|hasta|al|au";
const COUNT = /^(?:\d{1,4}[x×]?|[x×])$/iu;
const NUMBER_RANGE = new RegExp(`^[1-9]\\d{0,3}(?:(?:${SIGN})\\d{1,4})?$`, "u");
/** `R3toR5`. */
const GLUED = /^(\p{Lu}{1,4}\d{1,6})(?:to|thru|through|bis|tot)(?:\p{Lu}{1,4})?\d{1,6}$/u;
/** A range sign that stands alone between two words. */
const LONE_SIGN = new RegExp(`^(?:${SIGN}|${SIGN_WORD})$`, "iu");
const SIGNS = new RegExp(SIGN, "gu");
const SIGN_BEHIND = new RegExp(`(?:${SIGN})$`, "u");
const SIGN_BEFORE = new RegExp(`^(?:${SIGN})`, "u");
/** Names of nets and pads: ALARM, USB, !RESET!, D+, but not `100n` nor a word of a sentence. */
const WORD = /^[!#$&~*/+-]*\p{Lu}(?:[\p{Lu}\d_$#&!+./-])*$/u;
const MAX_WORD = 24;
/** What drawing programs write where no number was given yet: `R?`, `REF**`. */
const UNNUMBERED = /^\p{L}+(?:\?|\*\*)$/u;
/** Footnote marks behind a designator. */
const FOOTNOTE = /(?<=[\p{L}\d])[*†‡¹²³⁴⁵⁶⁷⁸⁹]+$/u;

export class ListReader {
  #text: string;
  readonly #most: number;
  readonly #place: Place;
  readonly #listed: ListedNames;
  readonly #remarks: Span[] = [];
  #words = 0;
  #empty = 0;

  /** Stops behind `most` names. */
  constructor(text: string, most: number, place: Place) {
    this.#text = text;
    this.#most = most;
    this.#place = place;
    this.#listed = new ListedNames(most);
  }

  read(): DesignatorList {
    let goesOn = false;
    if (!this.#plainRange()) goesOn = this.#items();
    return {
      names: this.#listed.names,
      words: this.#words,
      remarks: this.#remarks,
      empty: this.#empty,
      goesOn,
      problems: this.#listed.problems,
    };
  }

  /** Whether the text is one rising range that fits in, which is read. */
  #plainRange(): boolean {
    const match = PLAIN_RANGE.exec(this.#text);
    if (!match) return false;
    const [, letters, from, same = letters, to] = match;
    const [first, last] = [Number(from), Number(to)];
    if (same !== letters || last <= first || last - first >= this.#most) return false;
    const span = this.#place(0, this.#text.length);
    for (let n = first; n <= last; n++) this.#listed.add(letters! + n, span);
    return true;
  }

  /** Reads item by item. Tells whether a comma at the end lets the list go on. */
  #items(): boolean {
    const text = this.#withoutBrackets(this.#text);
    this.#text = text;
    let last = { start: 0, end: 0 };
    let items = 0;
    let done = 0;
    SEPARATOR.lastIndex = 0;
    for (let found = SEPARATOR.exec(text); ; found = SEPARATOR.exec(text)) {
      last = trim(text, done, found ? found.index : text.length);
      items++;
      if (last.start === last.end) this.#empty++;
      else this.#item(last);
      if (!found || this.#listed.isFull) break;
      done = found.index + found[0].length;
    }
    if (items === 1) this.#empty = 0;
    return items > 1 && last.start === last.end && this.#listed.names.length > 0;
  }

  /** The text with bracketed remarks blanked; brackets round designators only are dropped. */
  #withoutBrackets(text: string): string {
    if (!/[([{]/.test(text)) return text;
    return text.replace(/[([{]([^()[\]{}]*)[)\]}]?/g, (all, inner: string, at: number) => {
      const closed = all.length > inner.length + 1;
      const listed = new ListReader(inner, this.#most, within).read();
      const isList = listed.names.length > 0 && listed.remarks.length === 0 && !listed.words;
      if (isList) return ` ${inner}${closed ? " " : ""}`;
      const piece = trim(text, at + 1, at + 1 + inner.length);
      if (piece.start < piece.end) this.#remarks.push(piece);
      return " ".repeat(all.length);
    });
  }

  #item(piece: Span): void {
    if (/\s/.test(this.#slice(piece))) this.#spaced(piece);
    else if (!this.#single(piece)) this.#remarks.push(piece);
  }

  /** Words parted by space: a list, a range with spaces, or a remark from some word on. */
  #spaced(piece: Span): void {
    const words = splitAtSpaces(this.#text, piece);
    for (let i = 0; i < words.length; i++) {
      const sign = words[i + 1];
      const to = words[i + 2];
      if (sign && to && LONE_SIGN.test(this.#slice(sign)) && this.#range(words[i]!, to)) {
        i += 2;
        continue;
      }
      if (this.#halfRange(words, i)) {
        i++;
        continue;
      }
      if (this.#isCount(words, i)) {
        this.#remarks.push(words[i]!);
        continue;
      }
      if (this.#single(words[i]!, true) || this.#letterAlone(words[i]!, words[i + 1])) continue;
      this.#remarks.push({ start: words[i]!.start, end: piece.end });
      return;
    }
  }

  /** The count of `3x R3` and `3 x R3`. */
  #isCount(words: readonly Span[], i: number): boolean {
    const isFirst = this.#listed.names.length === 0 && i < 2 && i < words.length - 1;
    return isFirst && COUNT.test(this.#slice(words[i]!));
  }

  /** The letters of `R 3` and `C 1–4`: the number is read next. */
  #letterAlone(word: Span, next: Span | undefined): boolean {
    const letters = this.#slice(word);
    if (!next || !/^\p{Lu}{1,2}$/u.test(letters) || !NUMBER_RANGE.test(this.#slice(next)))
      return false;
    this.#listed.carry({ letters, digits: "", suffix: "" });
    return true;
  }

  /** `R1– R4` and `R1 –R4`. */
  #halfRange(words: readonly Span[], i: number): boolean {
    const [a, b] = [words[i]!, words[i + 1]];
    if (!b) return false;
    const [left, right] = [this.#slice(a), this.#slice(b)];
    const behind = SIGN_BEHIND.exec(left);
    if (behind) return this.#range({ start: a.start, end: a.start + behind.index }, b);
    const before = SIGN_BEFORE.exec(right);
    return before ? this.#range(a, { start: b.start + before[0].length, end: b.end }) : false;
  }

  /** One designator, range, or word without spaces. Tells whether it was one. */
  #single(piece: Span, mustBeNumbered = false): boolean {
    const marked = this.#slice(piece);
    if (UNNUMBERED.test(marked)) return false;
    const text = marked.replace(FOOTNOTE, "");
    const whole: Span = { start: piece.start, end: piece.start + text.length };
    const glued = GLUED.exec(text)?.[1];
    if (glued !== undefined) return this.#gluedRange(whole, glued.length);
    const designator = this.#listed.read(text);
    if (designator) {
      this.#listed.carry(designator);
      this.#listed.add(nameOf(designator), this.#spanOf(whole));
      return true;
    }
    for (const sign of text.matchAll(SIGNS)) {
      const end = whole.start + sign.index;
      const to = { start: end + sign[0].length, end: whole.end };
      if (this.#range({ start: whole.start, end }, to)) return true;
    }
    if (/[/+]/.test(text) && this.#joined(whole)) return true;
    if (mustBeNumbered || !isWord(text)) return false;
    this.#words++;
    this.#listed.carryNothing();
    this.#listed.add(text, this.#spanOf(whole));
    return true;
  }

  /** `R3toR5`, the first designator being `length` long. */
  #gluedRange({ start, end }: Span, length: number): boolean {
    const word = /^\p{Ll}+/u.exec(this.#text.slice(start + length, end))![0];
    const middle = start + length;
    return this.#range({ start, end: middle }, { start: middle + word.length, end });
  }

  /** `Q1/Q2`, `C3/5/7`, `Q1+Q2`. */
  #joined(piece: Span): boolean {
    const parts = this.#slice(piece).split(/[/+]/);
    const ahead = this.#listed.ahead();
    const designators: Designator[] = [];
    for (const part of parts) {
      const designator = ahead.read(part);
      if (!designator) return false;
      ahead.carry(designator);
      designators.push(designator);
    }
    let start = piece.start;
    for (const [i, designator] of designators.entries()) {
      const end = start + parts[i]!.length;
      this.#listed.carry(designator);
      this.#listed.add(nameOf(designator), this.#place(start, end));
      start = end + 1;
    }
    return true;
  }

  #range(first: Span, second: Span): boolean {
    const from = this.#listed.read(this.#slice(first));
    if (!from) return false;
    const ahead = this.#listed.ahead();
    ahead.carry(from);
    const to = ahead.read(this.#slice(second).replace(FOOTNOTE, ""));
    if (!to) return false;
    this.#listed.carry(from);
    const whole = { start: first.start, end: second.end };
    this.#listed.addRange(from, to, this.#slice(whole), this.#spanOf(whole));
    return true;
  }

  #spanOf({ start, end }: Span): Span {
    return this.#place(start, end);
  }

  #slice({ start, end }: Span): string {
    return this.#text.slice(start, end);
  }
}

function isWord(text: string): boolean {
  if (text.length < 2 || text.length > MAX_WORD || !WORD.test(text)) return false;
  // `R1/0207` is a part and its package.
  const slash = text.indexOf("/");
  return slash < 0 || !readDesignator(text.slice(0, slash));
}

function trim(text: string, from: number, to: number): Span {
  let start = from;
  let end = to;
  while (start < end && text[start]!.trim() === "") start++;
  while (end > start && text[end - 1]!.trim() === "") end--;
  return { start, end };
}

function splitAtSpaces(text: string, piece: Span): Span[] {
  const words: Span[] = [];
  for (const match of text.slice(piece.start, piece.end).matchAll(/\S+/g)) {
    const start = piece.start + match.index;
    words.push({ start, end: start + match[0].length });
  }
  return words;
}
