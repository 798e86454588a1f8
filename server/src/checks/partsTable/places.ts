/** Where parts tables stand: between `<!-- parts table -->` and `<!-- end -->`. */
import type { GuidePiece, Stage } from "../../model/guide.ts";
import type { Span } from "../../text/span.ts";

export interface TablePlace {
  readonly piece: GuidePiece;
  readonly open: Span;
  /** Undefined where the end is missing. */
  readonly end: Span | undefined;
}

/** In document order. Both comments stand in one piece, since a table holds no heading and no step. */
export function tablesOf(stage: Stage): TablePlace[] {
  const places: TablePlace[] = [];
  for (const { piece, start, end } of stage.stretches) {
    let open: Span | undefined;
    for (const fact of piece.facts.facts) {
      if (fact.kind !== "comment" || fact.comment.kind !== "parts table") continue;
      if (fact.span.start < start || fact.span.start >= end) continue;
      if (fact.comment.end) {
        if (open) places.push({ piece, open, end: fact.span });
        open = undefined;
      } else {
        if (open) places.push({ piece, open, end: undefined });
        open = fact.span;
      }
    }
    if (open) places.push({ piece, open, end: undefined });
  }
  return places;
}
