/** What of an item has been typed: its beginning that stays, and the designator at the cursor. */

/** Splits what stands before the cursor. */
export interface Typed {
  /** Stays as it is: a board's name, the members before, the first end of a range. */
  readonly head: string;
  /** What is being typed of a designator or value. */
  readonly word: string;
  /** The first end of the range whose second end is being typed, without its board. */
  readonly from: string | undefined;
  /** Several parts joined with `+` or `or`, or named behind `except`: single parts follow. */
  readonly wantsOne: boolean;
}

const BOARD = /^\s*[\p{L}\d][\p{L}\d ._-]*\/\s*/u;
const JOINED = /^.*(?:\+|\sor\s|\sexcept\s)\s*/isu;
const RANGE =
  /^(\p{L}[\p{L}\d_$]*\d\p{L}?)(?:\s*(?:[\u2010-\u2014\u2212~…-]|\.{2,3})\s*|\s+(?:to|bis|tot|à|a)\s+)/u;

export function splitTyped(typed: string): Typed {
  const joined = JOINED.exec(typed)?.[0];
  if (joined !== undefined) {
    return { head: joined, word: typed.slice(joined.length), from: undefined, wantsOne: true };
  }
  const board = BOARD.exec(typed)?.[0] ?? "";
  const rest = typed.slice(board.length);
  const range = RANGE.exec(rest);
  const head = board + (range?.[0] ?? "");
  return { head, word: typed.slice(head.length), from: range?.[1], wantsOne: false };
}
