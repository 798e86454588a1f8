/** A range as it is written, taken apart, and written again without one of its parts. */
import { readDesignator } from "../../syntax/designators.ts";
import { type NewName, renamed } from "./edit.ts";

/** `relay/C6–8` is the board `relay/`, the first end `C6`, the sign `–` and the last end `8`. */
export interface RangeText {
  readonly board: string;
  readonly first: string;
  readonly sign: string;
  readonly last: string;
}

const BOARD = /^[\p{L}\d][\p{L}\d ._-]*\/\s*/u;
const SIGN = /^(?:\s*(?:[-\u2010-\u2014\u2212~～…]|\.{2,3})\s*|\s+\S+\s+)/u;

/** The text of the range that begins with `from`; undefined where it is written otherwise. */
export function readRangeText(source: string, from: string): RangeText | undefined {
  const board = boardOf(source);
  const rest = source.slice(board.length);
  const first = [from, numberOf(from)].find((text) => startsWith(rest, text));
  const sign = first && SIGN.exec(rest.slice(first.length))?.[0];
  if (!first || !sign) return undefined;
  const last = rest.slice(first.length + sign.length);
  return { board, first: rest.slice(0, first.length), sign, last };
}

/** The board's name before a designator, with its slash. */
export function boardOf(source: string): string {
  return BOARD.exec(source)?.[0] ?? "";
}

/**
 * The items that the range becomes with the part renamed: neighbours stay a range where they are
 * three or more. Where all its names are sections of the part (`U3A–D`) it stays one.
 */
export function rangeWithout(
  text: RangeText,
  names: readonly string[],
  isMeant: (name: string) => boolean,
  name: NewName,
): readonly string[] {
  if (names.every(isMeant)) {
    const last = startsWith(text.last, name.from) ? renamed(text.last, name) : text.last;
    return [`${text.board}${renamed(names[0]!, name)}${text.sign}${last}`];
  }
  const pieces: string[] = [];
  let run: string[] = [];
  const close = () => {
    pieces.push(...runText(run, text));
    run = [];
  };
  for (const one of names) {
    if (!isMeant(one)) {
      run.push(one);
      continue;
    }
    close();
    pieces.push(renamed(one, name));
  }
  close();
  return pieces.map((piece, index) => (index === 0 ? text.board + piece : piece));
}

function runText(run: readonly string[], { sign, last }: RangeText): string[] {
  if (run.length < 3) return [...run];
  const end = run.at(-1)!;
  const isShort = /^\d/.test(last);
  return [`${run[0]}${sign}${isShort ? numberOf(end) : end}`];
}

/** The number of a designator with its suffix: `8` of C8, which a range may end with. */
export function numberOf(name: string): string {
  const read = readDesignator(name);
  return read ? read.digits + read.suffix : name;
}

function startsWith(text: string, beginning: string): boolean {
  return text.slice(0, beginning.length).toUpperCase() === beginning.toUpperCase();
}
