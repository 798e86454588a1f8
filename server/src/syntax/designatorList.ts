/**
 * Reads a cell that lists designators in any of the ways people write them: `C1, C2`, `C1,3,6–8`,
 * `R1 R2 R3`, `C1 to C6`, `U3A, B`, `Q1/Q2`, `R5 (optional)`.
 */
import { remembered } from "../quantity/remembered.ts";
import type { Span } from "../text/span.ts";
import { type Designator, expandRange, readDesignator } from "./designators.ts";

export interface ReadName {
  /** With the carried prefix filled in. */
  readonly name: string;
  /** All members of a range have the range's place. */
  readonly span: Span;
}

/** Turns offsets in the cell's text into a place elsewhere. */
export type Place = (start: number, end: number) => Span;

export interface ReadProblem {
  readonly span: Span;
  readonly message: string;
}

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

/** Designators of one range or cell beyond this number are not read (a problem says so). */
export const MAX_IN_CELL = 10_000;
/** Characters of a cell that are read; 10,000 designators take less. */
const MAX_LENGTH = 200_000;
const TOO_LONG = `Cells of more than ${MAX_LENGTH} characters are not read to their end. Split the line into several.`;

/** Reads a cell of the designator column; `place` says where its text stands. Never throws. */
export function readDesignatorList(text: string, place: Place = within): DesignatorList {
  if (text.length <= MAX_LENGTH) return readList(text, MAX_IN_CELL, place);
  const list = new ListReader(text.slice(0, MAX_LENGTH), MAX_IN_CELL, place).read();
  const problem = { span: place(MAX_LENGTH, text.length), message: TOO_LONG };
  return { ...list, problems: [...list.problems, problem] };
}

/** The same, but no further than is needed to tell what kind of text it is. */
export function glanceAtList(text: string): DesignatorList {
  return glanceOnce(text.slice(0, 2_000));
}

/** To tell columns apart the same cells are looked at again and again. */
const glanceOnce = remembered((text: string) => readList(text, 100, within));

/** Whether the text is nothing but numbered designators. */
export function isDesignatorList(text: string): boolean {
  const { names, words, remarks, problems } = glanceAtList(text);
  return names.length + problems.length > words && remarks.length === 0;
}

const within: Place = (start, end) => ({ start, end });

function readList(text: string, most: number, place: Place): DesignatorList {
  return readPlain(text, most, place) ?? new ListReader(text, most, place).read();
}

/** Designators and commas only, the common case, read without ado; undefined where there is more. */
function readPlain(text: string, most: number, place: Place): DesignatorList | undefined {
  if (!PLAIN.test(text)) return undefined;
  if (!text.includes(",")) return plain([{ name: text, span: place(0, text.length) }]);
  const names: ReadName[] = [];
  for (let start = 0; start < text.length; ) {
    if (names.length === most) return undefined;
    const comma = text.indexOf(",", start);
    const end = comma < 0 ? text.length : comma;
    names.push({ name: text.slice(start, end), span: place(start, end) });
    start = text.charCodeAt(end + 1) === 32 ? end + 2 : end + 1;
  }
  return plain(names);
}

function plain(names: readonly ReadName[]): DesignatorList {
  return { names, words: 0, remarks: NONE, empty: 0, goesOn: false, problems: NONE };
}

const NONE: readonly never[] = [];

const SEPARATOR = /[,;&\n\r，、；]|\s(?:and|und|et|y|en|e|\+)\s/giu;
const PLAIN = /^[A-Z]{1,5}\d{1,6}(?:, ?[A-Z]{1,5}\d{1,6})*$/;
/** The same of a range. */
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
/** A number with the letters carried on; its suffix is none of the letters of values (`10k`). */
const CARRIED = /^\d{1,6}[A-Da-d]?$/;
/** Footnote marks behind a designator. */
const FOOTNOTE = /(?<=[\p{L}\d])[*†‡¹²³⁴⁵⁶⁷⁸⁹]+$/u;

class ListReader {
  #text: string;
  readonly #most: number;
  readonly #place: Place;
  readonly #names: ReadName[] = [];
  readonly #remarks: Span[] = [];
  readonly #problems: ReadProblem[] = [];
  #words = 0;
  #empty = 0;
  /** Class letters, and the stem before a suffix letter, that the next item may leave out. */
  #letters: string | undefined;
  #stem: string | undefined;
  /** The designator before was written with leading zeros. */
  #padded = false;
  #full = false;

  /** Stops behind `most` names. */
  constructor(text: string, most: number, place: Place) {
    this.#text = text;
    this.#most = most;
    this.#place = place;
  }

  read(): DesignatorList {
    let goesOn = false;
    if (!this.#plainRange()) goesOn = this.#items();
    return {
      names: this.#names,
      words: this.#words,
      remarks: this.#remarks,
      empty: this.#empty,
      goesOn,
      problems: this.#problems,
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
    for (let n = first; n <= last; n++) this.#add(letters! + n, span);
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
      if (!found || this.#full) break;
      done = found.index + found[0].length;
    }
    if (items === 1) this.#empty = 0;
    return items > 1 && last.start === last.end && this.#names.length > 0;
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
    const isFirst = this.#names.length === 0 && i < 2 && i < words.length - 1;
    return isFirst && COUNT.test(this.#slice(words[i]!));
  }

  /** The letters of `R 3` and `C 1–4`: the number is read next. */
  #letterAlone(word: Span, next: Span | undefined): boolean {
    const letters = this.#slice(word);
    if (!next || !/^\p{Lu}{1,2}$/u.test(letters) || !NUMBER_RANGE.test(this.#slice(next)))
      return false;
    this.#carry({ letters, digits: "", suffix: "" });
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
    const designator = this.#end(text);
    if (designator) {
      this.#carry(designator);
      this.#add(nameOf(designator), this.#spanOf(whole));
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
    this.#letters = undefined;
    this.#stem = undefined;
    this.#add(text, this.#spanOf(whole));
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
    const ahead = this.#ahead();
    const designators: Designator[] = [];
    for (const part of parts) {
      const designator = ahead.#end(part);
      if (!designator) return false;
      ahead.#carry(designator);
      designators.push(designator);
    }
    let start = piece.start;
    for (const [i, designator] of designators.entries()) {
      const end = start + parts[i]!.length;
      this.#carry(designator);
      this.#add(nameOf(designator), this.#place(start, end));
      start = end + 1;
    }
    return true;
  }

  /** A reader that carries what this one does, to look ahead with. */
  #ahead(): ListReader {
    const ahead = new ListReader("", 1, within);
    ahead.#letters = this.#letters;
    ahead.#stem = this.#stem;
    ahead.#padded = this.#padded;
    return ahead;
  }

  #range(first: Span, second: Span): boolean {
    const from = this.#end(this.#slice(first));
    if (!from) return false;
    const ahead = this.#ahead();
    ahead.#carry(from);
    const to = ahead.#end(this.#slice(second).replace(FOOTNOTE, ""));
    if (!to) return false;
    this.#carry(from);
    this.#expand(from, to, { start: first.start, end: second.end });
    return true;
  }

  #expand(from: Designator, to: Designator, place: Span): void {
    const text = this.#slice(place);
    const span = this.#spanOf(place);
    const size = expandRange(from, to, 0)?.size;
    if (size !== undefined && size > MAX_IN_CELL) {
      this.#report(
        span,
        `The range ${text} names ${size} parts; more than ${MAX_IN_CELL} in one range are not read. Check its last number.`,
      );
      return;
    }
    const room = this.#most - this.#names.length + 1;
    const forward = expandRange(from, to, room);
    if (forward) {
      if (forward.size === 1) {
        this.#report(
          span,
          `${text} is a range of one part and read as ${nameOf(from)}. Write ${nameOf(from)}, or correct its last number.`,
        );
      }
      for (const name of forward.names) this.#add(name, span);
      return;
    }
    const [a, b] = [nameOf(from), nameOf(to)];
    const backward = expandRange(to, from, room);
    if (backward && backward.size <= MAX_IN_CELL) {
      this.#report(span, `The range ${text} runs backwards. It is read as ${b}–${a}; write it so.`);
      for (const name of backward.names) this.#add(name, span);
      return;
    }
    this.#report(
      span,
      `${a} and ${b} are not of one series, so ${text} is no range. Both are read as single parts; write a comma between them.`,
    );
    this.#add(a, span);
    this.#add(b, span);
  }

  /** A designator, or what is left of one when its letters are carried on. */
  #end(text: string): Designator | undefined {
    const whole = readDesignator(text);
    if (whole) return whole;
    if (this.#letters !== undefined && CARRIED.test(text)) {
      // `R1 0207` is a resistor and its package.
      return text.startsWith("0") && !this.#padded
        ? undefined
        : readDesignator(this.#letters + text);
    }
    if (this.#stem !== undefined && /^\p{Lu}$/u.test(text))
      return readDesignator(this.#stem + text);
    return undefined;
  }

  #carry({ letters, digits, suffix }: Designator): void {
    this.#letters = letters;
    this.#padded = digits.startsWith("0");
    this.#stem = suffix ? letters + digits : undefined;
  }

  #add(name: string, span: Span): void {
    if (this.#full) return;
    if (this.#names.length < this.#most) {
      this.#names.push({ name, span });
      return;
    }
    this.#full = true;
    this.#report(
      span,
      `More than ${MAX_IN_CELL} designators in one cell are not read; from ${name} on they are left out. Split the line into several.`,
    );
  }

  #report(span: Span, message: string): void {
    this.#problems.push({ span, message });
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

function nameOf({ letters, digits, suffix }: Designator): string {
  return letters + digits + suffix;
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
