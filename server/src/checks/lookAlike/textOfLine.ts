/** What a line of the list calls its parts. */
import type { ListLine } from "../../model/list/partsList.ts";

/** Value, else part number, else description, in one spelling. */
export function textOfLine(line: ListLine): string {
  return (line.text("value") || line.text("part number") || line.text("description")).trim();
}
