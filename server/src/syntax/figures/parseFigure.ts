/** Decides whether braces hold a figure, almost one, or ordinary text, and takes figures apart. */
import { readWholeUnit } from "../../quantity/unitText.ts";
import type { Span } from "../../text/span.ts";
import type { Figure, FigureName, StatedText, SyntaxProblem } from "../dialect.ts";
import { MappedText } from "../marks/mappedText.ts";
import { readReading } from "./reading.ts";
import { FUNCTIONS, NAME, type Shape, shapeOf, TOLERANCE_SIGN } from "./words.ts";

/** A figure, a near miss, or undefined: the braces are ordinary text. */
export type FigureResult =
  | { readonly figure: Figure }
  | { readonly almost: SyntaxProblem }
  | undefined;

const ENDS = /\s*(?:…|\.{2,3})\s*/;

/** Reads what stands between `{` and `}`. */
export function parseFigure(inside: MappedText): FigureResult {
  const span = { start: inside.offsetAt(0) - 1, end: inside.offsetAt(inside.text.length) + 1 };
  const text = inside.trim();
  if (text.text === "" || /[<>=!:]=|=[=>]/.test(text.text)) return undefined;
  const result = /^read\s/.test(text.text)
    ? readReading(span, text)
    : text.text.includes("||")
      ? bars(span, text)
      : readSum(span, text);
  return result && "almost" in result ? { almost: { ...result.almost, about: "figure" } } : result;
}

function readSum(span: Span, text: MappedText): FigureResult {
  const parts = splitEquals(text);
  const name = parts.length > 1 ? readName(parts[0]!) : undefined;
  if (name) parts.shift();
  const body = parts[0]!;
  const shapes = parts.map((part) => shapeOf(part.text.replace(TOLERANCE_SIGN, ";")));
  if (shapes.includes("other")) return endsInSum(span, name, parts) ?? misnamed(span, name, parts);
  if (!name && parts.length === 1 && shapes[0] === "plain number") return undefined;
  const problem = problemOf(span, text, parts, shapes, name);
  if (problem) return { almost: problem };
  const { value, tolerance } = splitTolerance(body);
  const stated = parts[1];
  return {
    figure: {
      span,
      ...(name && { name }),
      expression: textOf(value),
      ...(tolerance && { tolerance: textOf(tolerance) }),
      ...(stated && { stated: textOf(stated) }),
    },
  };
}

/** `{R1 || R2}`: what programs write for ∥, where names with numbers show that parts are meant. */
function bars(span: Span, text: MappedText): FigureResult {
  const better = text.text.replaceAll("||", "∥");
  const result = /\d/.test(better) ? readSum(span, new MappedText(better)) : undefined;
  if (!result || !("figure" in result)) return undefined;
  return {
    almost: {
      span: text.span(),
      message:
        "In parallel is written ∥ here, since | parts the cells of a Markdown table. As it is, nothing is computed.",
      suggestion: { title: `Write ${better}`, span: text.span(), text: better },
    },
  };
}

/** `{level = 2.5 V … 3.5 V}`: only what is measured lies between two ends. */
function endsInSum(
  span: Span,
  name: FigureName | undefined,
  parts: readonly MappedText[],
): FigureResult {
  const ends = parts.length === 1 ? parts[0]!.text.split(ENDS) : [];
  const isRange = ends.length === 2 && ends.every((end) => end !== "" && shapeOf(end) !== "other");
  if (!name || !isRange || !/\d/.test(ends.join(""))) return undefined;
  const message =
    `A figure has one value and a tolerance, so nothing is computed here. Write ${name.text} = value ± ` +
    "tolerance, or begin with read where the builder measures it.";
  const start = name.span.start;
  const suggestion = { title: "Write read", span: { start, end: start }, text: "read " };
  return { almost: { span, message, suggestion } };
}

/** One word before `=`, and a quantity with its unit at the end. */
function misnamed(
  span: Span,
  name: FigureName | undefined,
  parts: readonly MappedText[],
): FigureResult {
  if (name) return undefined;
  const [head, ...sums] = parts;
  const last = sums.at(-1)?.text ?? "";
  const unit = /^[-−]?\d[\d.,]*[ \u00a0]?(\D+)$/.exec(last)?.[1];
  if (!unit || !readWholeUnit(unit) || !/^\p{L}[^\s=±]*$/u.test(head!.text)) return undefined;
  if (sums.some(({ text }) => shapeOf(text.replace(TOLERANCE_SIGN, ";")) === "other")) {
    return undefined;
  }
  const message =
    `${head!.text} cannot name a figure, so nothing is computed here. A name has letters, digits ` +
    "and _; after it, in brackets, stands what it belongs to, as in V(TP1).";
  return { almost: { span, message } };
}

function problemOf(
  span: Span,
  text: MappedText,
  parts: readonly MappedText[],
  shapes: readonly Shape[],
  name: FigureName | undefined,
): SyntaxProblem | undefined {
  const wholeIsSum = name !== undefined || parts.length > 1 || /\d/.test(text.text);
  if (!wholeIsSum) return shapes.includes("unbalanced") ? undefined : emptyPart(span, parts);
  if (shapes.includes("unbalanced")) {
    return {
      span,
      message: `The brackets in {${text.text}} do not pair up, so it cannot be computed. Add or remove one.`,
    };
  }
  if (parts.length > 2) {
    return {
      span,
      message:
        "A figure holds one name, one expression and one stated value; here is one = too many.",
    };
  }
  return emptyPart(span, parts);
}

function emptyPart(span: Span, parts: readonly MappedText[]): SyntaxProblem | undefined {
  const halves = parts.flatMap((part) => {
    const { value, tolerance } = splitTolerance(part);
    return tolerance ? [value, tolerance] : [value];
  });
  if (!halves.some((half) => half.text === "")) return undefined;
  return { span, message: "A value is missing in this figure. Write one on each side of = and ±." };
}

/** A name such as `P(R50)`, with its subjects; undefined where the text is something else. */
export function readName(text: MappedText): FigureName | undefined {
  if (!NAME.test(text.text)) return undefined;
  const open = text.text.indexOf("(");
  const symbol = (open < 0 ? text.text : text.text.slice(0, open)).trim();
  if (FUNCTIONS.has(symbol)) return undefined;
  const subjects: StatedText[] = [];
  if (open >= 0) {
    let start = open + 1;
    for (let i = start; i < text.text.length; i++) {
      if (text.text[i] !== "," && text.text[i] !== ")") continue;
      const subject = textOf(text.slice(start, i).trim());
      if (subject.text === "") return undefined;
      subjects.push(subject);
      start = i + 1;
    }
  }
  return { text: text.text, span: text.span(), symbol, subjects };
}

/** Value and tolerance, both trimmed. */
export function splitTolerance(text: MappedText): { value: MappedText; tolerance?: MappedText } {
  const sign = TOLERANCE_SIGN.exec(text.text);
  if (!sign) return { value: text.trim() };
  return {
    value: text.slice(0, sign.index).trim(),
    tolerance: text.slice(sign.index + sign[0].length).trim(),
  };
}

export function textOf(text: MappedText): StatedText {
  const { offsets } = text;
  return { text: text.text, span: text.span(), ...(offsets && { offsets }) };
}

/** The trimmed pieces between equals signs. */
export function splitEquals(text: MappedText): MappedText[] {
  const pieces: MappedText[] = [];
  let start = 0;
  for (const { index } of text.text.matchAll(/=/g)) {
    pieces.push(text.slice(start, index).trim());
    start = index + 1;
  }
  pieces.push(text.slice(start).trim());
  return pieces;
}
