/** The value stated in a mark, `[R1–R4 = 4k7]`, differs from the list's. */
import type { ResolvedMark } from "../model/guide.ts";
import type { ListLine } from "../model/list/partsList.ts";
import type { Part } from "../model/parts.ts";
import { readValue, sameValue } from "../quantity/readValue.ts";
import type { StatedText } from "../syntax/dialect.ts";
import type { Check, Fix } from "./check.ts";
import { cellAt, replace } from "./places.ts";
import { listNames } from "./words.ts";

export const check: Check = {
  meta: {
    code: "stated-value",
    summary: "The value stated in a mark differs from the list.",
    severity: "warning",
    source: "IEC 60062 for value codes; common practice for type numbers",
    tags: ["parts"],
  },
  *mark(resolved) {
    const { stated } = resolved.mark;
    if (!stated) return;
    const parts = partsOf(resolved);
    const wrong = groupByLine(parts).filter(([part]) => differs(part!, stated.text));
    if (wrong.length === 0) return;
    yield {
      at: { piece: resolved.piece, span: stated.span },
      message: () => message(stated.text, wrong),
      related: wrong.slice(0, 5).map((group) => ({
        at: cellAt(group[0]!.list, group[0]!.line, "value", "designator"),
        message: () => `The list says ${listedValue(group[0]!)} for ${listNames(group)} here.`,
      })),
      fixes: listedByAll(parts).map((value) => () => takeListed(resolved, stated, value)),
    };
  },
};

function message(stated: string, wrong: readonly (readonly Part[])[]): string {
  const listed = wrong
    .slice(0, 3)
    .map((group) => `${listedValue(group[0]!)} for ${listNames(group)}`)
    .join("; ");
  return `This step says ${stated}, but the parts list says ${listed}. The builder believes one of the two: correct the wrong one.`;
}

function partsOf(resolved: ResolvedMark): Part[] {
  const parts = new Set<Part>();
  for (const item of resolved.items) {
    for (const supply of item.supplies) if (supply.kind === "part") parts.add(supply);
  }
  return [...parts];
}

function groupByLine(parts: readonly Part[]): Part[][] {
  const groups = new Map<ListLine, Part[]>();
  for (const part of parts) {
    const group = groups.get(part.line);
    if (group) group.push(part);
    else groups.set(part.line, [part]);
  }
  return [...groups.values()];
}

function listedValue(part: Part): string {
  const { cells } = part.line;
  return cells.value?.text || cells["part number"]?.text || cells.description?.text || "";
}

/** Of a chip and a socket that share the designator, either may be meant. */
function differs(part: Part, stated: string): boolean {
  const lines = part.socketLine ? [part.line, part.socketLine] : [part.line];
  return !lines.some((line) => agrees(line, part.letters, stated));
}

function agrees(line: ListLine, letters: string, stated: string): boolean {
  const texts = [line.cells.value, line.cells["part number"], line.cells.description].flatMap(
    (cell) => (cell?.text ? [cell.text] : []),
  );
  if (texts.length === 0) return true;
  const quantity = readValue(stated, letters).value;
  if (!quantity) return texts.some((text) => sameType(text, stated));
  if (line.value && sameValue(quantity, line.value)) return true;
  // A line may offer several values, or give its value in the description only.
  const said = texts.flatMap((text) => text.split(/\s+or\s+|[/;]|,\s+/i));
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

/** The value that the list gives for all of the parts, if it can stand in a mark. */
function listedByAll(parts: readonly Part[]): string[] {
  const values = new Set(parts.map((part) => part.line.cells.value?.text ?? ""));
  const [value] = values;
  return values.size !== 1 || !value || /[[\]<>`*_\\|~]/.test(value) ? [] : [value];
}

function takeListed(resolved: ResolvedMark, stated: StatedText, value: string): Fix {
  return replace(resolved.piece, stated.span, value, `Change to ${value}, as in the list`);
}
