/** Whether a value that the guide states is the one that the list gives. */
import type { ListLine } from "../../model/list/partsList.ts";
import type { Part } from "../../model/parts.ts";
import { readValue, sameValue } from "../../quantity/readValue.ts";

/** Of a chip and a socket that share the designator, either may be meant. */
export function differs(part: Part, stated: string): boolean {
  const lines = part.socketLine ? [part.line, part.socketLine] : [part.line];
  return !lines.some((line) => agrees(line, part.letters, stated));
}

/** Longer cells are not read to their end, as `readValue` does not. */
const MAX_TEXT = 400;

function agrees(line: ListLine, letters: string, stated: string): boolean {
  const texts = [line.cells.value, line.cells["part number"], line.cells.description].flatMap(
    (cell) => (cell?.text ? [cell.text] : []),
  );
  if (texts.length === 0) return true;
  const quantity = readValue(stated, letters).value;
  if (!quantity) return texts.some((text) => sameType(text, stated));
  if (line.value && sameValue(quantity, line.value)) return true;
  // A line may offer several values, or give its value in the description only.
  const said = texts.flatMap((text) => text.slice(0, MAX_TEXT).split(/\s+or\s+|[/;]|,\s+/i));
  if (said.some((one) => sameAs(one, letters, quantity))) return true;
  return !line.value && texts.some((text) => fold(text) === fold(stated));
}

function sameAs(text: string, letters: string, quantity: NonNullable<ListLine["value"]>): boolean {
  const read = readValue(text, letters).value;
  return read !== undefined && sameValue(quantity, read);
}

/**
 * Whether two texts may name one type: equal, one given as words of the other, or one more fully
 * than the other (`BC547` and `BC547B`). A further digit makes another type.
 */
function sameType(a: string, b: string): boolean {
  return holdsType(fold(a), fold(b)) || holdsType(tight(a), tight(b));
}

function holdsType(a: string, b: string): boolean {
  const [short, long] = a.length <= b.length ? [a, b] : [b, a];
  if (short === "") return true;
  for (let at = long.indexOf(short); at >= 0; at = long.indexOf(short, at + 1)) {
    const before = long[at - 1];
    const begins = !before || !/[\p{L}\p{N}]/u.test(before);
    if (begins && endsType(short, long[at + short.length])) return true;
  }
  return false;
}

function endsType(type: string, after: string | undefined): boolean {
  if (!after || !/[\p{L}\p{N}]/u.test(after)) return true;
  return /\d$/.test(type) && /\p{L}/u.test(after) && /\p{L}/u.test(type);
}

function fold(text: string): string {
  return text.toLowerCase().replace(/\s+/g, " ").trim();
}

/** `BC 547` and `BC-547` are BC547. */
function tight(text: string): string {
  return text.toLowerCase().replace(/[\s-]+/g, "");
}
