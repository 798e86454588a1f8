/** Where a guide's pages name parts by their designators: in marks, and in the prose. */
import type { Kit } from "../../model/kit.ts";
import type { Part } from "../../model/parts.ts";
import type { PieceNode } from "../../model/pieceNode.ts";
import type { Item, PartItem, PartMark, RangeItem } from "../../syntax/dialect.ts";
import type { Span } from "../../text/span.ts";

/** A stretch of a piece that names one part, or all of a range. */
export type Naming = MarkNaming | Mention;

export interface MarkNaming {
  readonly kind: "mark";
  readonly piece: PieceNode;
  readonly span: Span;
  readonly mark: PartMark;
  /** The item of the mark, and the part or range in it that names. */
  readonly item: Item;
  readonly named: PartItem | RangeItem;
  /** The board that bare designators mean there. */
  readonly board: string | undefined;
}

export interface Mention {
  readonly kind: "mention";
  readonly piece: PieceNode;
  readonly span: Span;
  readonly name: string;
  readonly board: string | undefined;
}

/** All namings of a piece, in document order. */
export function* namingsIn(piece: PieceNode): Iterable<Naming> {
  let board = piece.boardBefore;
  for (const fact of piece.facts.facts) {
    switch (fact.kind) {
      case "heading":
        if (fact.level === 2) board = undefined;
        break;
      case "comment":
        if (fact.comment.kind === "board") board = fact.comment.board;
        break;
      case "mention":
        yield { kind: "mention", piece, span: fact.span, name: fact.name, board };
        break;
      case "mark":
        for (const item of fact.mark.items) {
          for (const named of namedBy(item)) {
            yield { kind: "mark", piece, span: named.span, mark: fact.mark, item, named, board };
          }
        }
        break;
      default:
        break;
    }
  }
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

/** The parts that a naming means, in its order; names that no list knows mean none. */
export function partsNamed(naming: Naming, kit: Kit): readonly Part[] {
  const of = (name: string, board?: string) => kit.find(name, board, naming.board).part ?? [];
  if (naming.kind === "mention") return [of(naming.name)].flat();
  const { named } = naming;
  const names = named.kind === "range" ? named.names : [named.name];
  return names.flatMap((name) => of(name, named.board));
}
