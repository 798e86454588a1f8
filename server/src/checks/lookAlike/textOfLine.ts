/** What a line of the list calls its parts. */
import type { ListLine } from "../../model/list/partsList.ts";

/** Value, else part number, else description, in one spelling. */
export function textOfLine({ cells }: ListLine): string {
  const text = cells.value?.text || cells["part number"]?.text || cells.description?.text || "";
  return text.trim();
}
