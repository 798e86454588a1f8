/** Reads the items of a mark that name parts: designators, ranges, groups and choices. */

import { type Designator, expandRange, readDesignator } from "../designators.ts";
import {
  type ChoiceItem,
  type GroupItem,
  MAX_RANGE,
  type PartItem,
  type RangeItem,
  type SyntaxProblem,
} from "../dialect.ts";
import type { MappedText } from "./mappedText.ts";
import { CLASS_LETTERS, RANGE_SIGN } from "./words.ts";

/** What an item leaves out and takes from the item before it: `[relay/C1, 3, 6–8]`. */
export interface Carry {
  board?: string | undefined;
  letters?: string | undefined;
  /** `U3` after `U3A`, so that `[U3A, B]` is read. */
  stem?: string | undefined;
}

/** An item, or why it is none although it was meant as one. */
export type Reading<T> =
  | { readonly item: T; readonly certain: boolean; readonly problem?: SyntaxProblem }
  | { readonly wrong: SyntaxProblem };

/** A board's name and its slash; the slash of `R1 t/m R4` is none. */
const BOARD = /^(?!\S+\s+t\/m\s)([\p{L}\d](?:[\p{L}\d ._-]*[\p{L}\d._-])?)\s*\/\s*(?=\S)/u;
/** A bare word such as USB, !RESET! or U$2: no spaces, no signs of the mark grammar, no markup. */
const BARE_WORD = /^(?![-&._])(?=[\d!$#&.+_-]*\p{L})[\p{L}\d!$#&.+_-]+(?<![-&.+_])$/u;

/** Whether a designator's letters leave no doubt that it is one. */
function isCertain(designator: Designator): boolean {
  return CLASS_LETTERS.test(designator.letters);
}

/** The text behind a board prefix, with the board it names or the one carried on. */
export function splitBoard(text: MappedText, carry: Carry): { rest: MappedText; board?: string } {
  const match = BOARD.exec(text.text);
  if (match) return { rest: text.slice(match[0].length), board: match[1]! };
  return carry.board === undefined ? { rest: text } : { rest: text, board: carry.board };
}

/** One part: a designator, what is left of one (`3`, `B`), or a bare word. */
export function readPart(text: MappedText, carry: Carry): Reading<PartItem> | undefined {
  const { rest, board } = splitBoard(text, carry);
  const designator = readEnd(rest.text, carry);
  const name = designator ? nameOf(designator) : rest.text;
  if (!designator && !isBareWord(name)) return undefined;
  carry.board = board;
  carry.letters = designator?.letters;
  carry.stem = designator?.suffix ? designator.letters + designator.digits : undefined;
  const certain = designator !== undefined && isCertain(designator);
  if (certain && isSibling(board, designator)) return { wrong: slash(text, board!, name) };
  return { item: { kind: "part", span: text.span(), ...boardOf(board), name }, certain };
}

/** A range such as `R1–R4`, `C6–8` or `U3A–D`. */
export function readRange(text: MappedText, carry: Carry): Reading<RangeItem> | undefined {
  const { rest, board } = splitBoard(text, carry);
  for (const sign of rest.text.matchAll(RANGE_SIGN)) {
    const from = readEnd(rest.text.slice(0, sign.index), carry);
    if (!from) continue;
    const end = splitBoard(rest.slice(sign.index + sign[0].length), {});
    if (end.board !== undefined && end.board !== board) continue;
    const to = readEnd(end.rest.text, carryFrom(from));
    if (!to) continue;
    carry.board = board;
    carry.letters = from.letters;
    carry.stem = undefined;
    return range(text, from, to, board, rest.slice(sign.index, sign.index + sign[0].length));
  }
  return undefined;
}

/** `Q1+Q2`, parts that belong together, or `R1 or R2`, exactly one of them. */
export function readJoined(
  text: MappedText,
  carry: Carry,
): Reading<GroupItem | ChoiceItem> | undefined {
  const kind = text.text.includes("+") ? "group" : "choice";
  const members: PartItem[] = [];
  const carried = { ...carry };
  let certain = true;
  for (const piece of splitAt(text, kind === "group" ? /\s*\+\s*/g : /\s+or\s+/gi)) {
    const part = readPart(piece, carried);
    if (!part || "wrong" in part) return undefined;
    certain &&= part.certain;
    members.push(part.item);
  }
  if (members.length < 2 || !members.some(({ name }) => readDesignator(name))) return undefined;
  Object.assign(carry, carried);
  return { item: { kind, span: text.span(), members }, certain };
}

/** The pieces of a text between the matches of a separator (a global expression). */
export function splitAt(text: MappedText, separator: RegExp): MappedText[] {
  const pieces: MappedText[] = [];
  let done = 0;
  for (const match of text.text.matchAll(separator)) {
    pieces.push(text.slice(done, match.index));
    done = match.index + match[0].length;
  }
  pieces.push(text.slice(done));
  return pieces;
}

function readEnd(text: string, carry: Carry): Designator | undefined {
  const whole = readDesignator(text);
  if (whole) return whole;
  if (carry.letters !== undefined && /^\d+\p{L}?$/u.test(text)) {
    return readDesignator(carry.letters + text);
  }
  if (carry.stem !== undefined && /^\p{Lu}$/u.test(text)) return readDesignator(carry.stem + text);
  return undefined;
}

/** Whether a board prefix is a part of the same class: `R1/R2` was meant as two parts. */
function isSibling(board: string | undefined, { letters }: Designator): boolean {
  return board !== undefined && readDesignator(board)?.letters === letters;
}

function slash(text: MappedText, board: string, name: string): SyntaxProblem {
  const fixed = `${board}, ${name}`;
  return {
    span: text.span(),
    message: `${text.text} reads as the part ${name} of a board ${board}. Separate a mark's items by commas.`,
    suggestion: { title: `Write ${fixed}`, span: text.span(), text: fixed },
  };
}

function carryFrom({ letters, digits, suffix }: Designator): Carry {
  return { letters, stem: suffix ? letters + digits : undefined };
}

function range(
  text: MappedText,
  from: Designator,
  to: Designator,
  board: string | undefined,
  sign: MappedText,
): Reading<RangeItem> | undefined {
  const size = expandRange(from, to, 0)?.size;
  if (size === undefined) {
    if (!isCertain(from) || !isCertain(to)) return undefined;
    return { wrong: wrongRange(text, from, to) };
  }
  if (size > MAX_RANGE) return { wrong: tooLong(text, size) };
  let names: readonly string[] | undefined;
  const item: RangeItem = {
    kind: "range",
    span: text.span(),
    ...boardOf(board),
    from: nameOf(from),
    to: nameOf(to),
    // Written out only when asked for: a long guide full of long ranges must not fill the memory.
    get names() {
      names ??= expandRange(from, to, MAX_RANGE)?.names ?? [];
      return names;
    },
  };
  const certain = isCertain(from);
  return sign.text.includes("~") ? { item, certain, problem: tilde(sign) } : { item, certain };
}

function wrongRange(text: MappedText, from: Designator, to: Designator): SyntaxProblem {
  const [a, b] = [nameOf(from), nameOf(to)];
  const backwards = expandRange(to, from, 0) !== undefined;
  const message = backwards
    ? `The range ${text.text} runs backwards, so it names no part. Write ${b}–${a}.`
    : `${a} and ${b} are not of one series, so they make no range. Write a comma for two parts.`;
  const fixed = backwards ? `${b}–${a}` : `${a}, ${b}`;
  return {
    span: text.span(),
    message,
    suggestion: { title: `Write ${fixed}`, span: text.span(), text: fixed },
  };
}

function tooLong(text: MappedText, size: number): SyntaxProblem {
  const message =
    `The range ${text.text} names ${size} parts; more than ${MAX_RANGE} in one range are not read. ` +
    "Check its last number.";
  return { span: text.span(), message };
}

function tilde(sign: MappedText): SyntaxProblem {
  const { text } = sign;
  const at = text.indexOf("~");
  const span = sign.span(at, at + 1);
  return {
    span,
    message:
      "A plain Markdown renderer may strike out text between two ~. Write a dash for the range.",
    suggestion: { title: "Write a dash", span, text: "–" },
  };
}

function isBareWord(text: string): boolean {
  return BARE_WORD.test(text) && (text.length > 1 || text !== text.toLowerCase());
}

function nameOf({ letters, digits, suffix }: Designator): string {
  return letters + digits + suffix;
}

function boardOf(board: string | undefined): { board?: string } {
  return board === undefined ? {} : { board };
}
