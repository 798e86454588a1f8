/** How messages tell of a place in a workbook, which no editor shows as text. */
import type { SheetPlaces } from "../../syntax/sheets/sheetText.ts";
import type { Span } from "../../text/span.ts";

/** The message with its place in front: "Sheet `Parts`, cell B12: …". */
export function tell(places: SheetPlaces, span: Span, message: string): string {
  const cell = places.cellAt(span);
  const hidden = places.isHiddenAt(span) ? " (in a hidden row)" : "";
  return `Sheet \`${places.sheet}\`${cell === undefined ? "" : `, cell ${cell}${hidden}`}: ${message}`;
}
