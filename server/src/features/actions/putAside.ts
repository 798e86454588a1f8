/** Puts a part aside that a mark fits: `[later: K2]` behind the mark, or in its place. */
import type { GuideState } from "../../model/guideState.ts";
import { shift, type TextEdit, touches } from "../../text/span.ts";
import { pieceAt } from "../pieceAt.ts";
import type { Action, Selection } from "./action.ts";

export function* putAside(guide: GuideState, { uri, start }: Selection): Iterable<Action> {
  const piece = pieceAt(guide, uri, start);
  const at = start - (piece?.start ?? 0);
  const found = piece?.marks.find(({ mark }) => mark.span.start < at && at < mark.span.end);
  if (!piece || !found || found.mark.role !== "fit" || !found.step) return;
  const { mark } = found;
  const index = mark.items.findIndex(({ span }) => touches(span, at));
  const item = mark.items[index];
  if (!item || (item.kind !== "part" && item.kind !== "range")) return;
  if (found.items[index]!.supplies.length === 0) return;
  const source = (from: number, to: number) =>
    piece.page.text.slice(piece.start + from, piece.start + to);
  const name = source(item.span.start, item.span.end);
  const edits: TextEdit[] = [];
  if (mark.items.length === 1) {
    edits.push({ span: { start: item.span.start, end: item.span.start }, text: "later: " });
  } else {
    // What is behind it must not take its class letters over from it.
    const next = mark.items[index + 1];
    if (next && /^\d/.test(source(next.span.start, next.span.end))) return;
    const previous = mark.items[index - 1];
    const gone = next
      ? { start: item.span.start, end: next.span.start }
      : { start: previous!.span.end, end: item.span.end };
    edits.push({ span: gone, text: "" });
    const stated = mark.stated ? ` = ${mark.stated.text}` : "";
    edits.push({
      span: { start: mark.span.end, end: mark.span.end },
      text: ` [later: ${name}${stated}]`,
    });
  }
  const placed = edits.map(({ span, text }) => ({ span: shift(span, piece.start), text }));
  yield {
    title: `Put ${name} aside for a later step`,
    kind: "rewrite",
    edits: [{ uri, edits: placed }],
  };
}
