/** Where an offset stands once edits have been made, told without making them. */
import type { LineIndex, Position } from "./lines.ts";
import type { TextEdit } from "./span.ts";

/**
 * Place of an offset of the text after all edits. `lines` are those of the text before; edits may come
 * in any order but must not overlap.
 */
export function placeAfter(offset: number, edits: readonly TextEdit[], lines: LineIndex): Position {
  let place: Position = { line: 0, column: 0 };
  let done = 0;
  /** What is left to go to the offset. */
  let rest = offset;
  for (const { span, text } of edits.toSorted((a, b) => a.span.start - b.span.start)) {
    const kept = span.start - done;
    if (rest < kept) break;
    place = past(place, lines.positionAt(done), lines.positionAt(span.start));
    rest -= kept;
    done = span.end;
    const written = text.slice(0, rest).split(/\r\n|\n|\r/);
    const end = { line: written.length - 1, column: written.at(-1)!.length };
    place = past(place, { line: 0, column: 0 }, end);
    if (rest < text.length) return place;
    rest -= text.length;
  }
  return past(place, lines.positionAt(done), lines.positionAt(done + rest));
}

/** The place as far behind `place` as `to` is behind `from`. */
function past(place: Position, from: Position, to: Position): Position {
  if (to.line === from.line) {
    return { line: place.line, column: place.column + to.column - from.column };
  }
  return { line: place.line + to.line - from.line, column: to.column };
}
