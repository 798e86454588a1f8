/**
 * The stretch of a page that a move of a step touches, read afresh: its steps with the lines they
 * take along. Offsets count in the page's text.
 */
import type { Guide, Page, Stage, Step } from "../../model/guide.ts";
import { digestPiece } from "../../syntax/digest.ts";
import type { Fact, PieceFacts } from "../../syntax/facts.ts";
import type { Span } from "../../text/span.ts";

/** A step that is no sub-step, with its lines. */
export interface StepLines {
  readonly step: Step;
  /** From the comments above the step to the end of its last line that is not blank. */
  readonly lines: Span;
}

export interface Stretch {
  readonly page: Page;
  readonly span: Span;
  readonly digest: PieceFacts;
  readonly steps: readonly StepLines[];
}

/** Longer stretches are not read: it would hold up the editor. */
const MAX_LENGTH = 100_000;

/** Link and footnote definitions elsewhere do not matter where a text is only compared with itself. */
const NO_LABELS = { links: [], footnotes: [] };

export function digestOf(text: string): PieceFacts {
  return digestPiece(text, undefined, NO_LABELS)!;
}

/** Place of a fact in the text that was digested. */
export function spanOf(fact: Fact): Span {
  if (fact.kind === "mark") return fact.mark.span;
  return fact.kind === "figure" ? fact.figure.span : fact.span;
}

/** Where the step begins in its page's text. */
export function startOf(step: Step): number {
  return step.piece.start + step.fact.span.start;
}

/**
 * The stretch around the steps from `first` to `last`, with a step of room on both sides where the
 * stage has one; undefined when it is too long. `steps` are those of the stage that are no sub-steps.
 */
export function readStretch(
  steps: readonly Step[],
  first: number,
  last: number,
  stage: Stage,
  guide: Guide,
): Stretch | undefined {
  const { page } = steps[first]!.piece;
  const before = steps[first - 1]?.piece ?? stage.heading?.piece ?? steps[first]!.piece;
  const after = steps[last + 1]?.piece;
  const start = (before.page === page ? before : steps[first]!.piece).start;
  const end = after?.page === page ? after.start + after.length : stageEnd(stage, page, guide);
  if (end - start > MAX_LENGTH) return undefined;
  const span = { start, end };
  const digest = digestOf(page.text.slice(start, end));
  const within = steps.filter((step) => step.piece.page === page && inside(startOf(step), span));
  return { page, span, digest, steps: linesOf(within, digest, span, page, stage) };
}

/**
 * A step runs to the next step, with the comments above that, or to the next heading. Comments above
 * the first step of a stage concern the stage and stay where they are.
 */
function linesOf(
  steps: readonly Step[],
  digest: PieceFacts,
  span: Span,
  page: Page,
  stage: Stage,
): StepLines[] {
  const text = page.text.toString();
  const starts = steps.map((step) => {
    const line = lineStart(text, startOf(step));
    return step === stage.steps[0] ? line : commentsAbove(text, line);
  });
  const headings = digest.facts.flatMap((fact) =>
    fact.kind === "heading" ? [span.start + fact.span.start] : [],
  );
  const ends = [...starts, ...headings, span.end].sort((a, b) => a - b);
  return steps.map((step, i) => {
    const next = ends.find((end) => end > startOf(step))!;
    return {
      step,
      lines: { start: starts[i]!, end: lastLineEnd(text, commentsAbove(text, next)) },
    };
  });
}

function stageEnd(stage: Stage, page: Page, guide: Guide): number {
  const next = guide.stages[guide.stages.indexOf(stage) + 1]?.heading;
  return next?.piece.page === page ? next.piece.start + next.fact.span.start : page.text.length;
}

/** Start of the comments that end right above `line`, blank lines between allowed; else `line`. */
function commentsAbove(text: string, line: number): number {
  const end = trimmedEnd(text, line);
  if (!text.startsWith("-->", end - 3)) return line;
  const open = text.lastIndexOf("<!--", end - 3);
  if (open < 0 || text.slice(open, end - 3).includes("-->")) return line;
  const start = lineStart(text, open);
  if (text.slice(start, open).trim() !== "") return line;
  return commentsAbove(text, start);
}

/** End of the last line before `offset` that is not blank, its line end left out. */
function lastLineEnd(text: string, offset: number): number {
  let end = trimmedEnd(text, offset);
  while (end < offset && !/[\r\n]/.test(text[end]!)) end++;
  return end;
}

function trimmedEnd(text: string, offset: number): number {
  let end = offset;
  while (end > 0 && /\s/.test(text[end - 1]!)) end--;
  return end;
}

function lineStart(text: string, offset: number): number {
  return Math.max(text.lastIndexOf("\n", offset - 1), text.lastIndexOf("\r", offset - 1)) + 1;
}

function inside(offset: number, span: Span): boolean {
  return offset >= span.start && offset < span.end;
}
