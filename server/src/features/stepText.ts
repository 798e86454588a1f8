/** What a step says on one line: enough to know it by in a list. */
import type { GuidePiece, Step } from "../model/guide.ts";
import type { Figure, PartMark } from "../syntax/dialect.ts";
import { applyEdits, type Span, shift, type TextEdit } from "../text/span.ts";

const PARAGRAPH_END = /(?:\r\n|\n|\r)[ \t]*(?:[\r\n]|\d+[.)][ \t]|[-*+][ \t]|<!--|$)/;

/**
 * The step's first paragraph on one line: no list marker, no table bars, marks as their items and
 * figures as what they state. Enough to know the step by; publishing renders it in full.
 */
export function stepText({ piece, fact: { span } }: Step): string {
  const source = piece.page.text.slice(piece.start + span.start, piece.start + span.end);
  const length = PARAGRAPH_END.exec(source)?.index ?? source.length;
  const shown = applyEdits(source.slice(0, length), undress(piece, span.start, length));
  return shown
    .replace(/^\s*(?:\d+[.)]|[-*+]|#{1,6}|\|)[ \t]+/, "")
    .replaceAll("|", " ")
    .replace(/\s+/g, " ")
    .trim();
}

/** Edits to the text from `start` on that leave of marks and figures what a reader is shown. */
function undress(piece: GuidePiece, start: number, length: number): TextEdit[] {
  const edits: TextEdit[] = [];
  for (const fact of piece.facts.facts) {
    if (fact.kind !== "mark" && fact.kind !== "figure") continue;
    const { span } = fact.kind === "mark" ? fact.mark : fact.figure;
    if (span.start < start || span.end > start + length) continue;
    const text =
      fact.kind === "mark" ? itemsText(fact.mark, piece) : figureText(fact.figure, piece);
    edits.push({ span: shift(span, -start), text });
  }
  return edits;
}

/** A label shows nothing. */
function itemsText({ role, items }: PartMark, piece: GuidePiece): string {
  const last = items.at(-1);
  if (role === "label" || !last) return "";
  return textOf(piece, { start: items[0]!.span.start, end: last.span.end });
}

function figureText(
  { span, name, expression, tolerance, stated, reading }: Figure,
  piece: GuidePiece,
) {
  if (reading) {
    return textOf(piece, { start: span.start + 1, end: span.end - 1 }).replace(/^\s*read\s+/, "");
  }
  const value = stated ?? expression ?? name;
  if (!value) return "";
  return tolerance && !stated ? `${value.text} ± ${tolerance.text}` : value.text;
}

function textOf({ page, start }: GuidePiece, span: Span): string {
  return page.text.slice(start + span.start, start + span.end);
}
