/** Lets the places of a list keep their numbers when steps change places, so that a plain Markdown viewer counts on. */
import type { Span, TextEdit } from "../../text/span.ts";

const MARKER = /(\d{1,9})([.)])/y;

/**
 * The edits of a move, with the numbers of the items set right: `starts` is where each of the items
 * begins that the move touches, in the order of the text; `moved` are the lines of the one that moves.
 * Without change where they do not count on as one list, or where another length of a number would need
 * another indentation below it.
 */
export function keepNumbers(
  text: string,
  edits: readonly TextEdit[],
  starts: readonly number[],
  moved: Span,
): TextEdit[] {
  const markers = starts.flatMap((start) => markerAt(text, start) ?? []);
  const [first] = markers;
  const alike = (one: Marker) =>
    one.sign === first!.sign && one.number.length === first!.number.length;
  if (markers.length < starts.length || !markers.every(alike)) return [...edits];
  const numbers = markers.map(({ number }) => number);
  // Numbers that went astray with their steps may come home with them.
  if (numbers.some((number, i) => Number(number) !== Number(numbers[0]) + i)) return [...edits];
  const from = starts.findIndex((start) => start >= moved.start && start < moved.end);
  const up = from === starts.length - 1;
  const own = starts[from]! - moved.start;
  const lines = text.slice(moved.start, moved.end);
  const place = up ? 0 : starts.length - 1;
  const written = lines.slice(0, own) + numbers[place] + lines.slice(own + numbers[from]!.length);
  const result = edits.map((edit) => ({ ...edit, text: edit.text.replace(lines, () => written) }));
  for (const [index, start] of starts.entries()) {
    const number = numbers[index + (up ? 1 : -1)];
    if (index === from || number === undefined || number === numbers[index]) continue;
    const end = start + number.length;
    const there = result.findIndex(({ span }) => span.start === start && span.end === start);
    const before = there < 0 ? "" : result.splice(there, 1)[0]!.text;
    result.push({ span: { start, end }, text: before + number });
  }
  return result;
}

interface Marker {
  readonly number: string;
  readonly sign: string;
}

function markerAt(text: string, offset: number): Marker | undefined {
  MARKER.lastIndex = offset;
  const match = MARKER.exec(text);
  return match ? { number: match[1]!, sign: match[2]! } : undefined;
}
