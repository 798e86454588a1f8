/** What in the text keeps a step from moving: a reader or builder would lose something by it. */
import type { CommentFact, Fact, HeadingFact } from "../../syntax/facts.ts";
import type { Span } from "../../text/span.ts";
import { type StepLines, type Stretch, spanOf, startOf } from "./stretch.ts";

/**
 * Why a step is moved. "by hand": an author may take its own notes and readings along, as the checks
 * tell what comes of it. "before power": what the step does can only help the readings on its way.
 */
export type Purpose = "height order" | "by hand" | "before power";

/**
 * Whether the step `moved` must not go to the other end of the lines `passed`, which lie next to it:
 * a hazard note would no longer stand before what it warns of, a reading would be taken on another
 * state of the circuit, a subheading or a comment would speak of other steps.
 */
export function textHoldsBack(
  stretch: Stretch,
  moved: StepLines,
  passed: Span,
  purpose: Purpose,
): boolean {
  const { digest, span } = stretch;
  const from = Math.min(moved.lines.start, passed.start);
  const to = Math.max(moved.lines.end, passed.end);
  if (!isPlainBlock(stretch, moved) || splitsSection(stretch, moved)) return true;
  return digest.facts.some((fact, index) => {
    const at = span.start + spanOf(fact).start;
    if (purpose === "by hand" && isOfStep(fact, stretch)) return false;
    if (at >= from && at < to) return holdsBack(fact, index, stretch, moved, purpose);
    return fact.kind === "note" && standsAbove(fact.span, passed.start, stretch);
  });
}

/** A note or a figure that stands inside a step's own list item. */
function isOfStep(fact: Fact, { digest }: Stretch): boolean {
  if (fact.kind !== "note" && fact.kind !== "figure") return false;
  const { start, end } = spanOf(fact);
  return digest.facts.some(
    (one) =>
      one.kind === "step" && one.source === "item" && one.span.start < start && end <= one.span.end,
  );
}

function holdsBack(
  fact: Fact,
  index: number,
  stretch: Stretch,
  moved: StepLines,
  purpose: Purpose,
): boolean {
  const beforePower = purpose === "before power";
  switch (fact.kind) {
    case "note":
      return true;
    case "figure":
      return fact.figure.reading !== undefined && !beforePower;
    case "heading":
      return headingOf(moved, stretch)?.level !== fact.level || !opensStep(fact, stretch);
    case "comment":
      if (fact.comment.kind === "power on" && !beforePower) return true;
      return !goesWithStep(fact.comment.kind) || leavesStep(fact, index, stretch);
    case "step":
      return fact.source === "block" && isTableRow(fact.span, stretch);
    default:
      return false;
  }
}

function goesWithStep(kind: CommentFact["comment"]["kind"]): boolean {
  return kind === "allow" || kind === "power on" || kind === "takes";
}

/** Whether the comment speaks to a step other than the one whose lines it would move with. */
function leavesStep(comment: CommentFact, index: number, stretch: Stretch): boolean {
  if (comment.inline) return false;
  const next = stretch.digest.facts.find((fact, i) => i > index && fact.kind === "step");
  const home = stretch.steps.find(({ lines }) => holds(lines, comment.span, stretch));
  return !next || !home || !holds(home.lines, spanOf(next), stretch);
}

/** A step that stands by itself: at the margin, in no other step, and no row of a table. */
function isPlainBlock(stretch: Stretch, { step }: StepLines): boolean {
  const { text } = stretch.page;
  const start = startOf(step);
  if (!/(?:^|[\r\n]) {0,3}$/.test(text.slice(Math.max(0, start - 4), start))) return false;
  return stretch.steps.every(
    (other) => other.step === step || !(encloses(other.step, step) || encloses(step, other.step)),
  );
}

function encloses(outer: StepLines["step"], inner: StepLines["step"]): boolean {
  const { start, end } = outer.fact.span;
  const at = startOf(inner);
  return at > startOf(outer) && at < startOf(outer) + end - start;
}

/** Whether the step is a heading above subheadings that would stay behind. */
function splitsSection(stretch: Stretch, moved: StepLines): boolean {
  const heading = headingOf(moved, stretch);
  if (!heading) return false;
  const next = stretch.digest.facts.find(
    (fact): fact is HeadingFact =>
      fact.kind === "heading" && fact.span.start + stretch.span.start > startOf(moved.step),
  );
  return next !== undefined && next.level > heading.level;
}

function headingOf({ step }: StepLines, stretch: Stretch): HeadingFact | undefined {
  const at = startOf(step) - stretch.span.start;
  return stretch.digest.facts.find(
    (fact): fact is HeadingFact => fact.kind === "heading" && fact.span.start === at,
  );
}

function opensStep(heading: HeadingFact, stretch: Stretch): boolean {
  const at = stretch.span.start + heading.span.start;
  return stretch.steps.some(({ step }) => startOf(step) === at);
}

/** Whether the span ends right above `offset` and behind the stage's first step. */
function standsAbove(span: Span, offset: number, { page, span: whole, steps }: Stretch): boolean {
  const end = whole.start + span.end;
  if (end > offset || steps[0] === undefined || offset <= steps[0].lines.start) return false;
  return page.text.slice(end, offset).trim() === "";
}

function isTableRow(span: Span, { page, span: whole }: Stretch): boolean {
  return page.text.slice(whole.start + span.start, whole.start + span.end).includes("|");
}

function holds(lines: Span, span: Span, { span: whole }: Stretch): boolean {
  const at = whole.start + span.start;
  return at >= lines.start && at < lines.end;
}
