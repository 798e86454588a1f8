/** Reads `{read V(TP1) = 12 V ± 5 %}`: what the builder measures, and within which limits. */
import type { Span } from "../../text/span.ts";
import type { Figure, Reading, SyntaxProblem } from "../dialect.ts";
import type { MappedText } from "../marks/mappedText.ts";
import { type FigureResult, readName, splitTolerance, textOf } from "./parseFigure.ts";
import { shapeOf } from "./words.ts";

const LIMIT = /[=<>≤≥]/;
const UP_TO = /\s*(?:…|\.{2,3}|[–—])\s*|\s+(?:to|bis|à|tot|hasta)\s+/u;

/** A name with its subject, and behind it nothing or a value whose sign is missing. */
const MEASURED = /^\p{L}[\p{L}\p{Nd}_₀-₉]*\s*\(\s*\p{Lu}[^()=±;<>]*\)(?=$|\s.*\d)/u;

/** `text` begins with the word `read`. */
export function readReading(span: Span, text: MappedText): FigureResult {
  const rest = text.slice("read".length).trim();
  const sign = LIMIT.exec(rest.text);
  if (!sign) {
    const [measured] = MEASURED.exec(rest.text) ?? [];
    return measured === undefined ? undefined : { almost: noLimit(span, measured) };
  }
  const name = readName(rest.slice(0, sign.index).trim());
  const body = rest.slice(sign.index + 1).trim();
  if (!name) return /\d/.test(body.text) ? { almost: noName(span) } : undefined;
  const reading = limitsOf(sign[0], body);
  if ("message" in reading) return { almost: { span, message: reading.message } };
  const figure: Figure = { span, name, reading };
  return { figure };
}

function limitsOf(sign: string, body: MappedText): Reading | { message: string } {
  if (sign === "<" || sign === "≤") return single("below", body);
  if (sign === ">" || sign === "≥") return single("above", body);
  const upTo = UP_TO.exec(body.text);
  if (!upTo) return single("value", body);
  const low = body.slice(0, upTo.index).trim();
  const high = body.slice(upTo.index + upTo[0].length).trim();
  if (!isValue(low) || !isValue(high)) return UNREADABLE;
  return { limit: "between", value: textOf(low), upTo: textOf(high) };
}

const UNREADABLE = {
  message:
    "The limits of this reading cannot be read. Write = value ± tolerance, < value, > value, or = value … value.",
};

function single(
  limit: "value" | "below" | "above",
  body: MappedText,
): Reading | { message: string } {
  const { value, tolerance } = splitTolerance(body);
  if (!isValue(value) || (tolerance && !isValue(tolerance))) return UNREADABLE;
  if (limit !== "value") return tolerance ? UNREADABLE : { limit, value: textOf(value) };
  return { limit, value: textOf(value), ...(tolerance && { tolerance: textOf(tolerance) }) };
}

function isValue(text: MappedText): boolean {
  const shape = shapeOf(text.text);
  return text.text !== "" && (shape === "expression" || shape === "plain number");
}

function noLimit(span: Span, name: string): SyntaxProblem {
  return {
    span,
    message:
      `This reading does not say what ${name} should be. ` +
      "Write = value ± tolerance, < value, > value, or = value … value after it.",
  };
}

function noName(span: Span): SyntaxProblem {
  return {
    span,
    message: "This reading does not say what is measured. Write a name such as V(TP1) after read.",
  };
}
