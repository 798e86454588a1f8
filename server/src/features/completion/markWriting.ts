/** A part mark that is being written: what stands in it so far, and which item the cursor is in. */
import type { Item, Role } from "../../syntax/dialect.ts";
import { readItems } from "../../syntax/marks/items.ts";
import { MappedText } from "../../syntax/marks/mappedText.ts";
import { ROLES } from "../../syntax/marks/words.ts";
import type { Span } from "../../text/span.ts";
import type { Opening, Writing } from "./writing.ts";

export interface MarkWriting {
  readonly role: Role;
  /** The cursor is where a role word may still be written. */
  readonly mayTakeRole: boolean;
  /** The items before the one at the cursor, as written. */
  readonly listBefore: string;
  readonly listAfter: string;
  /** The item at the cursor, up to the cursor and whole. */
  readonly typed: string;
  readonly item: string;
  /** Where the item stands in the page. */
  readonly span: Span;
  /** A `]` follows. */
  readonly isClosed: boolean;
}

const ROLE = /^\s*(\p{L}[\p{L}-]*)\s*:\s*/u;
/** What a line begins with in a list or a quote. */
const LINE_START = /[\r\n]+[ \t>]*/g;
/** What a designator or a range may go on with behind the cursor. */
const TAIL = /^[\p{L}\d\u2010-\u2014-]+/u;
const PART_OR_RANGE = /^\p{Lu}+\d+\p{L}?(?:\s*[\u2010-\u2014-]\s*\p{Lu}*\d*\p{L}?)?$/u;

/** Undefined where the bracket can be no mark. */
export function readMarkWriting(opening: Opening, writing: Writing): MarkWriting | undefined {
  const { inside } = opening;
  if (/^\s*[\^!]/.test(inside)) return undefined;
  const word = ROLE.exec(inside);
  const role = word ? ROLES.get(word[1]!.toLowerCase()) : "fit";
  if (!role) return undefined;
  const behind = restOfBracket(writing.after);
  if (behind.isLink) return undefined;
  const list = inside.slice(word?.[0].length ?? 0).replace(LINE_START, (sign) => blank(sign));
  const start = itemStart(list);
  const typed = list.slice(start);
  const tail = behind.isClosed ? behind.item : tailOf(typed, writing.after);
  return {
    role,
    mayTakeRole: !word && list.slice(0, start).trim() === "",
    listBefore: list.slice(0, start),
    listAfter: behind.isClosed ? behind.list : "",
    typed,
    item: typed + tail,
    span: { start: writing.offset - typed.length, end: writing.offset + tail.length },
    isClosed: behind.isClosed,
  };
}

/** The items that a part of the list names; what cannot be read names nothing. */
export function itemsIn(list: string): readonly Item[] {
  return readItems(new MappedText(list.replace(/^[\s,]+|[\s,]+$/g, ""))).items;
}

function blank(sign: string): string {
  return " ".repeat(sign.length);
}

/** A length whose decimal comma parts no items: `1,5 m × CuL`. */
const LENGTH = /(?:^|,)\s*(\d+,\d+\s*(?:mm|cm|dm|m|in|ft)\b[^,]*)$/;

/** Where the item at the end of the list begins: behind the last comma and the spaces after it. */
function itemStart(list: string): number {
  const length = LENGTH.exec(list);
  if (length) return list.length - length[1]!.length;
  const from = list.lastIndexOf(",") + 1;
  return from + /^\s*/.exec(list.slice(from))![0].length;
}

/** What follows the cursor up to the closing bracket, if the bracket is closed on its line. */
function restOfBracket(after: string) {
  const end = after.search(/[[\]{}`]/);
  if (end < 0 || after[end] !== "]") return { isClosed: false, isLink: false, item: "", list: "" };
  const rest = after.slice(0, end);
  const comma = rest.search(/[,=]/);
  const item = (comma < 0 ? rest : rest.slice(0, comma)).trimEnd();
  const list = comma < 0 ? "" : rest.slice(comma + 1);
  return { isClosed: true, isLink: /^\]\((?:<|[^\s()]*\))/.test(after.slice(end)), item, list };
}

/** In a bracket that is not closed only what is plainly the rest of a designator belongs to it. */
function tailOf(typed: string, after: string): string {
  const tail = TAIL.exec(after)?.[0] ?? "";
  return typed !== "" && PART_OR_RANGE.test(typed + tail) ? tail : "";
}
