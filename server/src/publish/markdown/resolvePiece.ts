/**
 * A piece of the guide as plain Markdown: the author's own text, with marks and figures put as what
 * they show, steps numbered, and comments for the checker taken out.
 */
import type { GuideState } from "../../model/guideState.ts";
import type { PieceNode, StepNode } from "../../model/pieceNode.ts";
import type { Figure, PartMark } from "../../syntax/dialect.ts";
import type { CommentFact, HeadingFact, PictureFact } from "../../syntax/facts.ts";
import { applyEdits, type Span, type TextEdit } from "../../text/span.ts";
import { shownFigure } from "../figures.ts";
import type { PictureSource } from "../fill/filler.ts";
import { shownMark } from "../fill/marks.ts";
import type { Templates } from "../piece/templates.ts";
import { standsAlone, touchesAnother } from "../standsAlone.ts";
import type { PageWords } from "../words/form.ts";
import { escapeInline } from "./escapeInline.ts";
import type { PageLabels } from "./pageLabels.ts";

export interface ResolveContext {
  readonly guide: GuideState;
  readonly words: PageWords;
  readonly templates: Templates;
  readonly pictures: PictureSource;
  readonly labels: PageLabels;
  /** What stands below the heading of a stage; empty for a heading of another kind. */
  stageHead(heading: HeadingFact): { readonly number: number; readonly below: string } | undefined;
}

export function resolvePiece(piece: PieceNode, context: ResolveContext): string {
  const source = piece.page.text.slice(piece.start, piece.start + piece.length);
  const edits: TextEdit[] = context.labels.edits(piece, source);
  for (const fact of piece.facts.facts) {
    if (fact.kind === "mark") edits.push(...markEdit(fact.mark, piece, context, source));
    else if (fact.kind === "figure") edits.push(figureEdit(fact.figure, piece, context, source));
    else if (fact.kind === "comment") edits.push(withoutComment(fact, source));
    else if (fact.kind === "picture") edits.push(...pictureEdit(fact, piece, context, source));
    else if (fact.kind === "heading") edits.push(...headingEdits(fact, context, source));
  }
  for (const step of piece.steps) edits.push(...numberEdit(step, source));
  return applyEdits(source, edits);
}

/** Of bare words that no list knows, the brackets are the author's. */
function markEdit(
  mark: PartMark,
  piece: PieceNode,
  { guide, words }: ResolveContext,
  source: string,
): TextEdit[] {
  const shown = shownMark(mark, piece, guide, words);
  const { span } = mark;
  switch (shown.kind) {
    case "text":
      return [];
    case "nothing": {
      const start = source[span.start - 1] === " " ? span.start - 1 : span.start;
      return [{ span: { ...span, start }, text: "" }];
    }
    case "thing":
      return [{ span, text: asWords(escapeInline(shown.text), span, source) }];
    case "see":
      return [{ span, text: escapeInline(shown.text) }];
    case "items": {
      const stated = shown.stated ? ` = ${shown.stated}` : "";
      return [{ span, text: asWords(escapeInline(shown.items.join(", ") + stated), span, source) }];
    }
  }
}

/** In parentheses where the mark is no part of a sentence; marks that touch are parted. */
function asWords(text: string, { start }: Span, source: string): string {
  const blank = touchesAnother(source, start) ? " " : "";
  return blank + (standsAlone(source, start) ? `(${text})` : text);
}

function figureEdit(
  figure: Figure,
  piece: PieceNode,
  { guide }: ResolveContext,
  source: string,
): TextEdit {
  const { span } = figure;
  const blank = touchesAnother(source, span.start) ? " " : "";
  return { span, text: blank + escapeInline(shownFigure(figure, piece, guide).text) };
}

/** With its line where it stands alone on one. */
function withoutComment({ span }: CommentFact, source: string): TextEdit {
  const before = /(?:^|[\r\n])[ \t]*$/.exec(source.slice(0, span.start));
  // With a blank line behind it, where one stands before it, too.
  const isApart = /(?:^|\r\n|[\r\n])[ \t]*(?:\r\n|[\r\n])[ \t]*$/.test(source.slice(0, span.start));
  const rest = source.slice(span.end);
  const after =
    (isApart && /^[ \t]*(?:\r\n|[\r\n])[ \t]*(?:\r\n|[\r\n])/.exec(rest)) ||
    /^[ \t]*(?:\r\n|\n|\r|$)/.exec(rest);
  if (!before || !after) return { span, text: "" };
  const indent = before[0].replace(/^[\r\n]/, "").length;
  return { span: { start: span.start - indent, end: span.end + after[0].length }, text: "" };
}

/** The same picture where its file lies beside. */
function pictureEdit(
  { span, target, alt }: PictureFact,
  piece: PieceNode,
  { pictures, templates }: ResolveContext,
  source: string,
): TextEdit[] {
  const { uri } = piece.page;
  const url = "url" in target ? target.url : templates.addressOf(uri, target.label);
  const file = url === undefined ? undefined : pictures.source(uri, url);
  if (url === undefined || file === undefined) return [];
  const written = source.slice(span.start, span.end);
  const at = written.lastIndexOf(url);
  if ("url" in target && at > 0) {
    const start = span.start + at;
    return [{ span: { start, end: start + url.length }, text: file }];
  }
  return [{ span, text: `![${escapeInline(alt)}](${file})` }];
}

function headingEdits(fact: HeadingFact, context: ResolveContext, source: string): TextEdit[] {
  const stage = fact.level === 2 ? context.stageHead(fact) : undefined;
  if (!stage) return [];
  const { start, end } = fact.span;
  const opening = /^[ \t]*(?:#+[ \t]+)?/.exec(source.slice(start, end))![0].length;
  const edits = [
    { span: { start: start + opening, end: start + opening }, text: `${stage.number} ` },
  ];
  if (stage.below) edits.push({ span: { start: end, end }, text: `\n\n${stage.below.trimEnd()}` });
  return edits;
}

/**
 * The step's number at its beginning. The marker of an ordered item becomes a bullet of the same
 * width, so that what belongs to the item stays in it and no other number shows.
 */
function numberEdit(
  { fact: { span, source: kind }, number }: StepNode,
  source: string,
): TextEdit[] {
  const text = source.slice(span.start, span.end);
  const label = `**${number}** `;
  if (kind === "item") {
    const marker = /^(\d{1,9}[.)])([ \t]*)/.exec(text);
    if (!marker) return [];
    const [, sign, blanks] = marker;
    const start = span.start;
    const room = Math.min(4, sign!.length - 1 + blanks!.length);
    const spaces = blanks === "" ? "" : " ".repeat(room);
    return [{ span: { start, end: start + marker[0].length }, text: `-${spaces || " "}${label}` }];
  }
  const opening = /^\s*(?:#{1,6}[ \t]+|[-*+][ \t]+|\|[ \t]*)?/.exec(text)![0].length;
  const start = span.start + opening;
  return [{ span: { start, end: start }, text: label }];
}
