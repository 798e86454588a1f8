/**
 * Part marks in micromark. A mark is decided at its `]`, after CommonMark has refused a link and GFM a
 * footnote there, so both stay what they are. What was nearly a mark keeps its ordinary Markdown; its
 * `]` becomes a token that carries the problem.
 */
import type {
  Construct,
  Effects,
  Event,
  Extension,
  State,
  Token,
  TokenizeContext,
} from "micromark-util-types";
import type { PartMark, SyntaxProblem } from "../dialect.ts";
import { literalEvents, readStretch, type Stretch, stretchBetween } from "./lines.ts";
import { MappedText } from "./mappedText.ts";
import { mendedMark } from "./mended.ts";
import { type MarkResult, parseMark } from "./parseMark.ts";
import { MAX_MARK, TEXT_ROLES } from "./words.ts";

declare module "micromark-util-types" {
  interface TokenTypeMap {
    partMark: "partMark";
    partMarkEnd: "partMarkEnd";
    almostMark: "almostMark";
    dialectText: "dialectText";
  }
  interface Token {
    _mark?: PartMark;
    _problem?: SyntaxProblem;
    /** The text as a plain renderer shows it. */
    _shown?: string;
    _stretch?: Stretch;
    _opening?: Token;
  }
}

const RIGHT_BRACKET = 93;

/** What may stand inside a mark: text, escapes, entities, line breaks, and signs of emphasis. */
const PLAIN_TYPES: ReadonlySet<string> = new Set([
  "data",
  "characterEscape",
  "escapeMarker",
  "characterEscapeValue",
  "characterReference",
  "characterReferenceMarker",
  "characterReferenceMarkerNumeric",
  "characterReferenceMarkerHexadecimal",
  "characterReferenceValue",
  "attentionSequence",
  "strikethroughSequenceTemporary",
  "lineEnding",
  "linePrefix",
]);

const markEnd: Construct = {
  name: "partMark",
  add: "after",
  tokenize: tokenizeMarkEnd,
  resolveTo: resolveToMark,
};

export const marks: Extension = { text: { [RIGHT_BRACKET]: markEnd } };

function tokenizeMarkEnd(this: TokenizeContext, effects: Effects, ok: State, nok: State): State {
  const read = readBracket(this);
  if (!read) return nok;
  return (code) => {
    if ("almost" in read.result) {
      effects.enter("almostMark", { _problem: read.result.almost, _shown: "]" });
      effects.consume(code);
      effects.exit("almostMark");
      return ok;
    }
    effects.enter("partMarkEnd", {
      _mark: read.result.mark,
      _shown: `[${read.shown}]`,
      _stretch: read.stretch,
      _opening: read.opening,
    });
    effects.consume(code);
    effects.exit("partMarkEnd");
    return ok;
  };
}

interface Bracket {
  readonly result: NonNullable<MarkResult>;
  readonly opening: Token;
  readonly shown: string;
  readonly stretch: Stretch;
}

/** The bracket that ends here, if it is a mark or almost one. */
function readBracket(context: TokenizeContext): Bracket | undefined {
  const opening = context._labelStarts?.at(-1);
  // CommonMark calls a bracket balanced when it has just refused to make a link of it.
  if (opening?.type !== "labelLink" || !opening._balanced) return undefined;
  const end = context.now();
  if (end.offset - opening.end.offset > MAX_MARK) return undefined;
  const inner = context.events.slice(openingIndex(context.events, opening) + 4);
  const stretch = stretchBetween(opening.end, end, inner);
  const { text, shown } = readStretch(context, stretch);
  const result = readInside(inner, text);
  return result && { result, opening, shown, stretch };
}

function openingIndex(events: readonly Event[], opening: Token): number {
  let index = events.length - 1;
  while (events[index]![1] !== opening || events[index]![0] !== "enter") index--;
  return index;
}

function readInside(inner: readonly Event[], text: MappedText): MarkResult {
  if (inner.some(([, token]) => !PLAIN_TYPES.has(token.type))) return almostPlain(text);
  const result = parseMark(text);
  if (!hasEmphasis(inner)) return result;
  // Signs that have a meaning in the mark's grammar are not taken for emphasis; in free text they are.
  const free = result && "mark" in result && TEXT_ROLES.has(result.mark.role);
  return result && !free ? result : almostPlain(text);
}

/** Whether a plain renderer would show emphasis in the text. */
function hasEmphasis(events: readonly Event[]): boolean {
  const openers = new Set<string>();
  for (const [kind, token, context] of events) {
    if (kind === "exit" || token.type !== "attentionSequence") continue;
    const sign = context.sliceSerialize(token)[0]!;
    if (token._close && openers.has(sign)) return true;
    if (token._open) openers.add(sign);
  }
  return false;
}

/** A bracket that would be a mark without the emphasis, code or brackets in it. */
function almostPlain(inside: MappedText): MarkResult {
  const bare = inside.text
    .replace(/[*`[\]]|~~|<[^>]*>/g, "")
    .replace(/(?<![\p{L}\d])_+|_+(?![\p{L}\d])/gu, "")
    .trim();
  const better = mendedMark(bare) ?? bare;
  const result = parseMark(new MappedText(better));
  if (!result || !("mark" in result) || !result.mark.certain) return undefined;
  const span = { start: inside.offsetAt(0) - 1, end: inside.offsetAt(inside.text.length) + 1 };
  const message =
    "A mark holds plain text only: no emphasis, code, links, figures or brackets inside. " +
    "As it is, nothing in it is counted.";
  if (better === inside.text.trim()) return { almost: { span, message } };
  const text = `[${better}]`;
  return { almost: { span, message, suggestion: { title: `Write ${text}`, span, text } } };
}

/** Puts one mark in place of its bracket's events. */
function resolveToMark(events: Event[], context: TokenizeContext): Event[] {
  const end = events.at(-1)![1];
  if (end.type !== "partMarkEnd") return events;
  const opening = end._opening!;
  const { lines, breaks } = end._stretch!;
  const whole = lines.map((line, index) => ({
    start: index === 0 ? opening.start : line.start,
    end: index === lines.length - 1 ? end.end : line.end,
  }));
  const mark: Token = {
    type: "partMark",
    start: { ...opening.start },
    end: { ...end.end },
    _mark: end._mark!,
    _shown: end._shown!,
  };
  events.splice(
    openingIndex(events, opening),
    events.length,
    ...literalEvents(mark, { lines: whole, breaks }, context),
  );
  return events;
}
