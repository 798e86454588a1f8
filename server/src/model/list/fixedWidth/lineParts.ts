/** What a line of a text in columns of blanks may hold. */
import { isDesignatorList } from "../../../syntax/designatorList.ts";
import { type Piece, piecesOf } from "../../../syntax/fixedWidth.ts";

/** Cells of a line without a header; a bar before the first of them is none. */
export function barePieces(line: string): Piece[] {
  return piecesOf(
    line.replace(/^\s*\|/, (bar) => " ".repeat(bar.length)),
    2,
  );
}

/** Whether it looks like a row of a list. */
export function mayListParts(line: string): boolean {
  const pieces = barePieces(line);
  return pieces.length >= 2 && pieces.some(({ text }) => isNumbered(text));
}

/** Whether a word of it is a designator. */
export function hasDesignator(line: string): boolean {
  return piecesOf(line, 1).some(({ text }) => isNumbered(text));
}

/** Most words have no digit; they are told apart soonest so. */
function isNumbered(text: string): boolean {
  return /\d/.test(text) && isDesignatorList(text);
}
