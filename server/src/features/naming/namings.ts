/** Where a guide's pages name parts by their designators: in marks, and in the prose. */
import type { Kit } from "../../model/kit.ts";
import type { Part } from "../../model/parts.ts";
import type { PieceNode } from "../../model/pieceNode.ts";
import { expandRange, readDesignator } from "../../syntax/designators.ts";
import {
  type Item,
  MAX_RANGE,
  type PartItem,
  type PartMark,
  type RangeItem,
} from "../../syntax/dialect.ts";
import type { Fact, MentionFact } from "../../syntax/facts.ts";
import type { Span } from "../../text/span.ts";

/** A stretch of a piece that names one part, or all of a range. */
export interface Naming {
  readonly piece: PieceNode;
  readonly span: Span;
  /** What it says; in the prose no board. */
  readonly named: PartItem | RangeItem;
  /** The item of a mark that it is, or belongs to; undefined in the prose. */
  readonly item: Item | undefined;
  readonly mark: PartMark | undefined;
  /** The board that bare designators mean there. */
  readonly board: string | undefined;
}

/** All namings of a piece, in document order. */
export function* namingsIn(piece: PieceNode): Iterable<Naming> {
  let board = piece.boardBefore;
  let done = 0;
  for (const fact of piece.facts.facts) {
    board = boardAfter(fact, board);
    if (fact.kind === "mark") {
      const { mark } = fact;
      for (const item of mark.items) {
        for (const named of namedBy(item)) {
          yield { piece, span: named.span, named, item, mark, board };
        }
      }
    } else if (fact.kind === "mention" && fact.span.start >= done) {
      const named = mentioned(fact, piece);
      done = named.span.end;
      yield { piece, span: named.span, named, item: undefined, mark: undefined, board };
    }
  }
}

/** The board in force behind a fact. */
function boardAfter(fact: Fact, board: string | undefined): string | undefined {
  if (fact.kind === "heading" && fact.level === 2) return undefined;
  return fact.kind === "comment" && fact.comment.kind === "board" ? fact.comment.board : board;
}

/** The designators and ranges that an item is written with; of a set those it leaves out. */
function namedBy(item: Item): readonly (PartItem | RangeItem)[] {
  switch (item.kind) {
    case "part":
    case "range":
      return [item];
    case "group":
    case "choice":
      return item.members;
    case "set":
      return item.except;
    default:
      return [];
  }
}

const RANGE_END =
  /^(?:[-\u2010-\u2014\u2212…]|\.{2,3})((?:\p{Lu}[\p{L}_]{0,15})?\d{1,5}[A-Za-z]?)(?![\p{L}\p{N}_])/u;

/** A mention, or the range that it opens: `R1–R4` in the prose means all four. */
function mentioned({ name, span }: MentionFact, piece: PieceNode): PartItem | RangeItem {
  const single: PartItem = { kind: "part", span, name };
  const { text } = piece.page;
  const next = piece.start + span.end;
  if (!mayOpenRange(text.charCodeAt(next))) return single;
  const end = RANGE_END.exec(text.slice(next, next + 30));
  const from = readDesignator(name);
  if (!end || !from) return single;
  const last = readDesignator(end[1]!);
  const to = last ?? (/^\d+$/.test(end[1]!) ? end[1]! : undefined);
  const range = to && expandRange(from, to, MAX_RANGE);
  if (!range || range.size < 2 || range.size > MAX_RANGE) return single;
  return {
    kind: "range",
    span: { start: span.start, end: span.end + end[0].length },
    from: name,
    to: range.names.at(-1)!,
    names: range.names,
  };
}

/** A dash of any kind, a point or an ellipsis. */
function mayOpenRange(code: number): boolean {
  return code === 45 || code === 46 || (code >= 0x2010 && code <= 0x2026) || code === 0x2212;
}

/** The parts that a naming means, in its order; names that no list knows mean none. */
export function partsNamed({ named, board }: Naming, kit: Kit): readonly Part[] {
  const names = named.kind === "range" ? named.names : [named.name];
  return names.flatMap((name) => kit.find(name, named.board, board).part ?? []);
}
