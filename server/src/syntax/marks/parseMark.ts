/** Decides whether a bracket is a part mark, almost one, or ordinary Markdown. */

import type { Span } from "../../text/span.ts";
import type { PartMark, Role, StatedText, SyntaxProblem, TextItem } from "../dialect.ts";
import {
  almostList,
  almostRole,
  almostWithoutRole,
  emptyRole,
  emptyValue,
  secondValue,
} from "./almost.ts";
import { type ItemList, isWhole, readItems } from "./items.ts";
import type { MappedText } from "./mappedText.ts";
import { MAX_MARK, ROLES, TEXT_ROLES } from "./words.ts";

/** A mark, a near miss, or undefined: the bracket is ordinary Markdown. */
export type MarkResult =
  | { readonly mark: PartMark }
  | { readonly almost: SyntaxProblem }
  | undefined;

const LABEL = /^#(\p{L}[\p{L}\d._-]*)$/u;
const ROLE = /^(\p{L}[\p{L}-]*)\s*:/u;

/** Reads what stands between `[` and `]`. */
export function parseMark(inside: MappedText): MarkResult {
  const text = inside.trim();
  if (text.text === "" || text.text.length > MAX_MARK) return undefined;
  const span = { start: inside.offsetAt(0) - 1, end: inside.offsetAt(inside.text.length) + 1 };
  const label = LABEL.exec(text.text);
  if (label) return { mark: labelMark(span, text, label[1]!) };
  const word = ROLE.exec(text.text);
  if (!word) return withoutRole(span, text);
  const rest = text.slice(word[0].length);
  const role = ROLES.get(word[1]!.toLowerCase());
  const roleText = text.slice(0, word[1]!.length);
  if (!role) return almost(almostRole(span, roleText, rest));
  if (rest.trim().text === "") return almost(emptyRole(span, role));
  return TEXT_ROLES.has(role)
    ? textMark(span, role, roleText.span(), rest)
    : partsMark(span, role, roleText.span(), rest);
}

function labelMark(span: Span, text: MappedText, name: string): PartMark {
  const item: TextItem = { kind: "text", span: text.slice(1).span(), text: name };
  return { span, role: "label", items: [item], certain: true };
}

/** Tool, own and see: free text, parted at commas that are no decimal commas. */
function textMark(span: Span, role: Role, roleSpan: Span, rest: MappedText): MarkResult {
  const items: TextItem[] = [];
  let start = 0;
  const add = (end: number) => {
    let text = rest.slice(start, end).trim();
    if (role === "see" && text.text.startsWith("#")) text = text.slice(1);
    if (text.text) items.push({ kind: "text", span: text.span(), text: text.text });
    start = end + 1;
  };
  for (const { index } of rest.text.matchAll(/,(?!(?<=\d,)\d)/g)) add(index);
  add(rest.text.length);
  if (items.length === 0) return almost(emptyRole(span, role));
  return { mark: { span, role, roleSpan, items, certain: true } };
}

function partsMark(span: Span, role: Role, roleSpan: Span, rest: MappedText): MarkResult {
  const { list, stated } = splitStated(rest);
  const read = readItems(list);
  const problem = statedProblem(read, list, stated) ?? almostList(read, list);
  if (problem) return almost(problem);
  return { mark: markOf(span, role, read, stated, true, roleSpan) };
}

function withoutRole(span: Span, text: MappedText): MarkResult {
  const { list, stated } = splitStated(text);
  const read = readItems(list);
  const known = read.certain > 0;
  if (isWhole(read) && !known) return { mark: markOf(span, "fit", read, stated, false) };
  const problem =
    (known ? statedProblem(read, list, stated) : undefined) ?? almostWithoutRole(read, list, text);
  if (problem) return almost(problem);
  return isWhole(read) ? { mark: markOf(span, "fit", read, stated, true) } : undefined;
}

function markOf(
  span: Span,
  role: Role,
  read: ItemList,
  stated: MappedText | undefined,
  certain: boolean,
  roleSpan?: Span,
): PartMark {
  return {
    span,
    role,
    ...(roleSpan && { roleSpan }),
    items: read.items,
    ...(stated && { stated: statedText(stated) }),
    certain,
    ...(read.problems.length > 0 && { problems: read.problems }),
  };
}

/** The items and the value behind `=`, which runs to the end: its comma is a decimal comma. */
function splitStated(text: MappedText): { list: MappedText; stated?: MappedText } {
  const at = text.text.indexOf("=");
  if (at < 0) return { list: text };
  return { list: text.slice(0, at), stated: text.slice(at + 1) };
}

function statedText(stated: MappedText): StatedText {
  const text = stated.trim();
  return { text: text.text, span: text.span() };
}

function statedProblem(
  read: ItemList,
  list: MappedText,
  stated: MappedText | undefined,
): SyntaxProblem | undefined {
  if (!stated) return undefined;
  return stated.trim().text === "" ? emptyValue(list, stated) : secondValue(read, list, stated);
}

function almost(problem: SyntaxProblem | undefined): MarkResult {
  return problem && { almost: problem };
}
