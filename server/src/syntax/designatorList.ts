/**
 * Reads a cell that lists designators in any of the ways people write them: `C1, C2`, `C1,3,6–8`,
 * `R1 R2 R3`, `C1 to C6`, `U3A, B`, `Q1/Q2`, `R5 (optional)`.
 */
import { remembered } from "../quantity/remembered.ts";
import { type DesignatorList, ListReader, type Place, within } from "./designatorItems.ts";
import { MAX_IN_CELL, type ReadName } from "./listedNames.ts";

/** Characters of a cell that are read; 10,000 designators take less. */
const MAX_LENGTH = 200_000;
const TOO_LONG = `Cells of more than ${MAX_LENGTH} characters are not read to their end. Split the line into several.`;
const NONE: readonly never[] = [];
const PLAIN = /^[A-Z]{1,5}\d{1,6}(?:, ?[A-Z]{1,5}\d{1,6})*$/;

/** Reads a cell of the designator column; `place` says where its text stands. Never throws. */
export function readDesignatorList(text: string, place: Place = within): DesignatorList {
  if (text.length <= MAX_LENGTH) return readList(text, MAX_IN_CELL, place);
  const list = new ListReader(text.slice(0, MAX_LENGTH), MAX_IN_CELL, place).read();
  const problem = { span: place(MAX_LENGTH, text.length), message: TOO_LONG };
  return { ...list, problems: [...list.problems, problem] };
}

/** The same, but no further than is needed to tell what kind of text it is. */
export function glanceAtList(text: string): DesignatorList {
  return glanceOnce(text.slice(0, 2_000));
}

/** To tell columns apart the same cells are looked at again and again. */
const glanceOnce = remembered((text: string) => readList(text, 100, within));

/** Whether the text is nothing but numbered designators. */
export function isDesignatorList(text: string): boolean {
  const { names, words, remarks, problems } = glanceAtList(text);
  return names.length + problems.length > words && remarks.length === 0;
}

function readList(text: string, most: number, place: Place): DesignatorList {
  return readPlain(text, most, place) ?? new ListReader(text, most, place).read();
}

/** Designators and commas only, the common case, read without ado; undefined where there is more. */
function readPlain(text: string, most: number, place: Place): DesignatorList | undefined {
  if (!PLAIN.test(text)) return undefined;
  if (!text.includes(",")) return plain([{ name: text, span: place(0, text.length) }]);
  const names: ReadName[] = [];
  for (let start = 0; start < text.length; ) {
    if (names.length === most) return undefined;
    const comma = text.indexOf(",", start);
    const end = comma < 0 ? text.length : comma;
    names.push({ name: text.slice(start, end), span: place(start, end) });
    start = text.charCodeAt(end + 1) === 32 ? end + 2 : end + 1;
  }
  return plain(names);
}

function plain(names: readonly ReadName[]): DesignatorList {
  return { names, words: 0, remarks: NONE, empty: 0, goesOn: false, problems: NONE };
}
