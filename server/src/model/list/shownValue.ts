/** The value of a line in the words that a reader knows it by. */
import { formatQuantity } from "../../quantity/formatQuantity.ts";
import { classLetters, isPassive } from "./letters.ts";
import type { ListLine } from "./partsList.ts";

/** A type as makers write it, `BC547B` or `1N4148WS`: no bare order number, no address, no sentence. */
const TYPE_NUMBER = /^(?=\P{L}*\p{L})(?=\D*\d)[\p{L}\d+\-./]{2,24}$/u;

/**
 * The value cell as written. Where it is empty, or the list has no such column: the value that the
 * description tells; of parts that are known by their type, the part number. Else empty.
 */
export function shownValue(line: ListLine): string {
  const written = line.text("value").trim();
  if (written !== "") return written;
  if (line.value) return formatQuantity(line.value);
  const letters = classLetters(line.designators);
  const type = line.text("part number").trim();
  return letters && !isPassive(letters) && TYPE_NUMBER.test(type) ? type : "";
}
