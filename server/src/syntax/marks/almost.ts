/**
 * Says what is wrong with a bracket that was meant as a mark and is none, and how to write it.
 * Silent for ordinary prose in brackets: only what holds beyond doubt a designator, or a role word
 * with its colon, counts as meant.
 */

import { nearestWord } from "../../text/nearest.ts";
import type { Span } from "../../text/span.ts";
import { readDesignator } from "../designators.ts";
import type { Role, SyntaxProblem } from "../dialect.ts";
import { usualSetWords } from "./almostSet.ts";
import { type ItemList, isCertainList, isWhole, readItems } from "./items.ts";
import { MappedText } from "./mappedText.ts";
import { splitAt } from "./parts.ts";
import { FIT_WORDS, ROLES, TEXT_ROLES } from "./words.ts";

const DANGLING =
  /^\s*(?:[-\u2010-\u2014\u2212~…+]|\.{2,3})\s*|\s*(?:[-\u2010-\u2014\u2212~…+]|\.{2,3})\s*$/gu;
/** What people put between parts instead of a comma. */
const OTHER_COMMA = /\s*(?:;|&|\/|\s(?:and|und|et|y|en)\s|\s)\s*/gu;
const OTHER_OR = /^(.*\S)\s+(?:oder|ou|of|o)\s+(\S.*)$/iu;
/** Parts with a value behind them: `R1–R8 (1k)`, `R1 4k7`, `R1: 4k7`. */
const VALUE_BEHIND = /^(.*?\S)\s*(?:[:(]|\s)\s*(\S+(?: \S+)?)$/u;
const VALUE = /^(?=.*\d)[\p{L}\d.,%Ωµ°±/-]+(?: [%ΩµnpukMm]?[FHΩVAW%]?)?$/u;

/** A role word with nothing behind its colon. */
export function emptyRole(span: Span, role: Role): SyntaxProblem {
  const what = TEXT_ROLES.has(role) ? "nothing" : "no part";
  return {
    span,
    message: `This mark names ${what}. Write what it is about after "${role}:".`,
  };
}

/** A word before the colon that is no role; undefined where the bracket is ordinary prose. */
export function almostRole(
  span: Span,
  word: MappedText,
  rest: MappedText,
): SyntaxProblem | undefined {
  const list = beforeValue(rest);
  const meansParts = isCertainList(list);
  const written = word.text.toLowerCase();
  if (FIT_WORDS.has(written) && meansParts) {
    return {
      span,
      message: `"${word.text}" is not needed: a mark without a role word fits its parts.`,
      suggestion: replace(`Write [${rest.trim().text}]`, span, `[${rest.trim().text}]`),
    };
  }
  const role = nearestWord(written, ROLES.keys());
  if (role && (meansParts || isMisspeltTextRole(written, role, rest))) {
    const message = `"${word.text}" is no role word. Did you mean "${role}"?`;
    return { span, message, suggestion: replace(`Write "${role}"`, word.span(), role) };
  }
  if (!meansParts) return undefined;
  const known = [...ROLES.keys()].join(", ");
  return {
    span,
    message:
      `"${word.text}" is no role word, so these parts are not counted. ` +
      `Role words are English in every guide: ${known}. Without one the parts are fitted here.`,
  };
}

function isMisspeltTextRole(written: string, role: string, rest: MappedText): boolean {
  // Words of three letters are too near to ordinary ones: "on", "now", "sea".
  return TEXT_ROLES.has(ROLES.get(role)!) && written.length >= 4 && rest.trim().text !== "";
}

/** What keeps the list of a mark with a role word from being read. */
export function almostList(read: ItemList, list: MappedText): SyntaxProblem | undefined {
  if (isWhole(read)) return undefined;
  return (
    read.wrong[0] ??
    diagnose(list) ??
    (read.unread[0] && (diagnose(read.unread[0]) ?? noPart(read.unread[0]))) ??
    emptyItem(read, list)
  );
}

/** The same without a role word, where prose must be left alone. */
export function almostWithoutRole(
  read: ItemList,
  list: MappedText,
  text: MappedText,
): SyntaxProblem | undefined {
  if (isWhole(read)) return undefined;
  if (read.wrong[0]) return read.wrong[0];
  const whole = diagnose(list) ?? roleWithoutColon(text);
  if (whole) return whole;
  if (read.certain === 0) return undefined;
  const unread = read.unread[0];
  if (!unread) return emptyItem(read, list);
  return diagnose(unread) ?? (read.certain >= read.unread.length ? noPart(unread) : undefined);
}

export function emptyValue(list: MappedText, stated: MappedText): SyntaxProblem {
  const span = { start: list.trim().span().end, end: stated.span().end };
  return {
    span,
    message: "No value follows the =. Write the value, or leave the = out.",
    suggestion: replace("Remove the =", span, ""),
  };
}

/** `[R1 = 4k7, R2]`: more parts behind the value, which holds for the whole mark. */
export function secondValue(
  read: ItemList,
  list: MappedText,
  stated: MappedText,
): SyntaxProblem | undefined {
  const classes = new Set(read.items.flatMap(lettersOf));
  const more = [...stated.text.matchAll(/,\s*(\p{L}+)\d+(?!\p{L})/gu)].find((match) =>
    classes.has(match[1]!),
  );
  if (!more && !stated.text.includes("=")) return undefined;
  const message =
    "A mark holds one value, at its end, for all its parts. Give parts with another value a mark of their own.";
  const span = { start: list.span().start, end: stated.span().end };
  if (!more) return { span, message };
  const comma = stated.slice(more.index, more.index + more[0].search(/\p{L}/u)).span();
  return { span, message, suggestion: replace("Begin a new mark", comma, "], [") };
}

function lettersOf(item: ItemList["items"][number]): string[] {
  if (item.kind === "part") return [readDesignator(item.name)?.letters ?? ""];
  if (item.kind === "range") return [readDesignator(item.from)?.letters ?? ""];
  return [];
}

/** What is written in place of the mark grammar, where that is plain to see. */
function diagnose(text: MappedText): SyntaxProblem | undefined {
  return dangling(text) ?? otherComma(text) ?? otherOr(text) ?? otherSet(text) ?? valueBehind(text);
}

function dangling(text: MappedText): SyntaxProblem | undefined {
  const trimmed = text.trim();
  const rest = trimmed.text.replace(DANGLING, "");
  if (rest === trimmed.text || rest === "") return undefined;
  const at = trimmed.text.indexOf(rest);
  if (!isCertainList(trimmed.slice(at, at + rest.length))) return undefined;
  const what = trimmed.text.includes("+") ? "group" : "range";
  return {
    span: trimmed.span(),
    message: `The ${what} ${trimmed.text} has one end only. Add the other end, or leave the sign out.`,
    suggestion: replace(`Write ${rest}`, trimmed.span(), rest),
  };
}

function otherComma(text: MappedText): SyntaxProblem | undefined {
  const trimmed = text.trim();
  const pieces = splitAt(trimmed, OTHER_COMMA).map((piece) => piece.text);
  if (pieces.length < 2 || pieces.includes("")) return undefined;
  const better = pieces.map((piece) => piece.replace(/,$/, "")).join(", ");
  const read = readItems(unmapped(better));
  const all = read.items.every((item) => item.kind === "part" || item.kind === "range");
  if (!all || read.certain !== read.items.length || !isWhole(read)) return undefined;
  return {
    span: trimmed.span(),
    message: `Separate a mark's items by commas: ${better}. As it is, none of these parts is counted.`,
    suggestion: replace("Write commas", trimmed.span(), better),
  };
}

function otherOr(text: MappedText): SyntaxProblem | undefined {
  const trimmed = text.trim();
  const match = OTHER_OR.exec(trimmed.text);
  if (!match) return undefined;
  const better = `${match[1]} or ${match[2]}`;
  if (!isCertainList(unmapped(better))) return undefined;
  return {
    span: trimmed.span(),
    message: 'A choice of parts is written with "or", in guides of every language.',
    suggestion: replace(`Write ${better}`, trimmed.span(), better),
  };
}

/** `remaining R`, `all R but R1`. */
function otherSet(text: MappedText): SyntaxProblem | undefined {
  const trimmed = text.trim();
  const better = usualSetWords(trimmed.text);
  if (!better || !isCertainList(unmapped(better))) return undefined;
  return {
    span: trimmed.span(),
    message: `A set of parts is written with "all" or "rest of", and "except": ${better}. As it is, none of these parts is counted.`,
    suggestion: replace(`Write ${better}`, trimmed.span(), better),
  };
}

function valueBehind(text: MappedText): SyntaxProblem | undefined {
  const trimmed = text.trim();
  const match = VALUE_BEHIND.exec(trimmed.text);
  if (!match || !isCertainList(unmapped(match[1]!))) return undefined;
  const value = match[2]!.replace(/^\(|\)$/g, "");
  if (!VALUE.test(value) || readDesignator(value)) return undefined;
  const better = `${match[1]} = ${value}`;
  return {
    span: trimmed.span(),
    message: `A mark takes its value after "=": ${better}.`,
    suggestion: replace(`Write ${better}`, trimmed.span(), better),
  };
}

function roleWithoutColon(text: MappedText): SyntaxProblem | undefined {
  const word = /^\p{L}+(?=\s)/u.exec(text.text)?.[0];
  const role = word && ROLES.get(word.toLowerCase());
  if (!role || TEXT_ROLES.has(role)) return undefined;
  if (!isCertainList(beforeValue(text.slice(word.length)))) return undefined;
  const span = text.slice(0, word.length).span();
  return {
    span: text.span(),
    message: `A colon is missing after the role word "${word}".`,
    suggestion: replace(`Write "${word}:"`, span, `${word}:`),
  };
}

function emptyItem(read: ItemList, list: MappedText): SyntaxProblem | undefined {
  const gap = read.empty[0];
  if (!gap) return undefined;
  const bounds = list.span();
  const span = gap.span();
  // Take one comma away: the one behind the gap, or at the list's end the one before it.
  const cut =
    span.end < bounds.end
      ? { start: span.start, end: span.end + 1 }
      : { start: Math.max(bounds.start, span.start - 1), end: span.end };
  return {
    span: cut,
    message:
      "There is nothing between two commas here. Remove a comma, or add the part that is missing.",
    suggestion: replace("Remove the comma", cut, ""),
  };
}

function noPart(text: MappedText): SyntaxProblem {
  const message =
    `"${text.text}" is no part, so none of this mark is counted. ` +
    "A mark holds designators, ranges, sets and counts; put remarks outside the bracket.";
  return { span: text.span(), message };
}

function beforeValue(text: MappedText): MappedText {
  const at = text.text.indexOf("=");
  return at < 0 ? text : text.slice(0, at);
}

/** A rewritten text, read only to see whether it would do. */
function unmapped(text: string): MappedText {
  return new MappedText(text);
}

function replace(title: string, span: Span, text: string) {
  return { title, span, text };
}
