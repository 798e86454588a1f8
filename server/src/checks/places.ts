/** Where findings stand, and the edits their fixes make, for parts, lines and uses. */
import type { Anchor, Guide, GuidePiece, Use } from "../model/guide.ts";
import type { ListLine, Meaning, PartsList } from "../model/list/partsList.ts";
import type { Part } from "../model/parts.ts";
import { type Span, shift } from "../text/span.ts";
import type { Fix } from "./check.ts";

export function useAt(use: Use): Anchor {
  return { piece: use.resolved.piece, span: use.span };
}

/** The designator's cell in the list. */
export function listedAt(part: Part): Anchor {
  return { uri: part.list.uri, span: part.listed.span };
}

/** The first of the line's cells that is there, else the whole row. */
export function cellAt(list: PartsList, line: ListLine, ...meanings: Meaning[]): Anchor {
  for (const meaning of meanings) {
    const cell = line.cells[meaning];
    if (cell?.text) return { uri: list.uri, span: cell.span };
  }
  return { uri: list.uri, span: line.span };
}

/** What the piece's text says at a span of it. */
export function textAt(piece: GuidePiece, span: Span): string {
  return piece.page.text.slice(piece.start + span.start, piece.start + span.end);
}

/** A fix that replaces one span of a piece. */
export function replace(
  piece: GuidePiece,
  span: Span,
  text: string,
  title: string,
  safe = false,
): Fix {
  const edits = [{ span: shift(span, piece.start), text }];
  return { title, safe, edits: [{ uri: piece.page.uri, edits }] };
}

/** Whether every list could be read; without one nothing is known to be absent. */
export function listsAreRead(guide: Guide): boolean {
  return guide.lists.length > 0 && guide.lists.every((list) => list.format !== "unreadable");
}
