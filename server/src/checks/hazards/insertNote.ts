/** Fixes that put a hazard note before a step. */
import type { Step } from "../../model/guide.ts";
import { MOVING_ROLES, type PartMark } from "../../syntax/dialect.ts";
import type { Language } from "../../text/language.ts";
import type { Span, TextEdit } from "../../text/span.ts";
import type { Hazard } from "../../trade/hazards/hazards.ts";
import { hazardName } from "../../trade/hazards/lexicon.ts";
import { noteTemplate } from "../../trade/hazards/templates.ts";
import type { Fix } from "../check.ts";
import type { Covered } from "./coverage.ts";
import type { NoteReading } from "./note.ts";

/** Writes a note to begin with before the step. */
export function insertNote(step: Step, hazard: Hazard, language: Language): Fix | undefined {
  const lines = noteTemplate(hazard, language);
  const at = lines && placeBefore(step);
  if (!lines || at === undefined) return undefined;
  const { page } = step.piece;
  const edit = insertion(page.text.toString(), at, lines);
  const title = `Insert a note on ${hazardName(hazard, "en")}, to be completed`;
  return { title, safe: false, edits: [{ uri: page.uri, edits: [edit] }] };
}

/** Moves a note that comes too late before the step. */
export function moveNote({ trigger, late }: Covered): Fix | undefined {
  const { page } = trigger.step.piece;
  const at = placeBefore(trigger.step);
  if (!late || at === undefined || late.piece.page !== page) return undefined;
  const text = page.text.toString();
  const taken = takeOut(text, late);
  if (!taken || at > taken.edit.span.start) return undefined;
  const edits = [insertion(text, at, taken.lines), taken.edit];
  return {
    title: "Move the note before this step",
    safe: false,
    edits: [{ uri: page.uri, edits }],
  };
}

/**
 * Where a note before the step can stand: the start of a line at which no list or table is cut in
 * two; before the comments that concern the step. Undefined where there is no such place.
 */
function placeBefore(step: Step): number | undefined {
  const outer = outermost(step);
  const text = outer.piece.page.text.toString();
  let at = outer.piece.start + tableStart(outer);
  if (at > 0 && !/[\r\n]/.test(text[at - 1]!)) return undefined;
  for (;;) {
    const above = COMMENT_ABOVE.exec(text.slice(Math.max(0, at - 2000), at));
    if (!above) return at;
    at -= above[0].length;
  }
}

/** A line that is a comment, with the blank lines below it; not the end of a table that is written. */
const COMMENT_ABOVE =
  /(?<=^|[\r\n])[ \t]*<!--(?!\s*end\s*-->)(?:(?!-->)[^\r\n])*-->[ \t]*(?:\r\n|\r|\n)(?:[ \t]*(?:\r\n|\r|\n)){0,3}$/;

/** The step that the sub-step belongs to. */
function outermost(step: Step): Step {
  const { steps } = step.stage;
  let index = steps.indexOf(step);
  while (index > 0 && steps[index]!.fact.depth > 0) index--;
  return steps[index] ?? step;
}

/** Start of the step, or of the table whose row it is; counts in the piece. */
function tableStart({ piece, fact }: Step): number {
  let header: number | undefined;
  for (const one of piece.facts.facts) {
    if (one.kind !== "row" || one.span.start > fact.span.start) continue;
    if (one.header) header = one.span.start;
    if (one.span.start === fact.span.start) return header ?? fact.span.start;
  }
  return fact.span.start;
}

function insertion(text: string, at: number, lines: readonly string[]): TextEdit {
  const end = /\r\n|\n|\r/.exec(text)?.[0] ?? "\n";
  const note = lines.map((line) => line + end).join("");
  return { span: { start: at, end: at }, text: `${isParted(text, at) ? "" : end}${note}${end}` };
}

/** Whether a blank line or nothing stands above the start of a line. */
function isParted(text: string, at: number): boolean {
  const before = text.slice(Math.max(0, at - 200), at).replaceAll("\r\n", "\n");
  return at === 0 || /[\r\n][ \t]*[\r\n]$/.test(before);
}

interface TakenOut {
  readonly lines: readonly string[];
  readonly edit: TextEdit;
}

/**
 * The note's lines without their indentation, and the edit that takes them out; undefined where
 * other blocks would not stay what they are.
 */
function takeOut(text: string, note: NoteReading): TakenOut | undefined {
  const { piece, fact } = note;
  const first = piece.start + fact.span.start;
  const start = lineStart(text, first);
  const last = piece.start + fact.span.end;
  const indent = text.slice(start, first);
  const blank = /^[ \t\r\n]*/.exec(text.slice(last))![0];
  const next = last + blank.length;
  const nextStart = next < text.length ? lineStart(text, next) : next;
  // A list item or another quote holds it, or what follows would sink into the list above it.
  if (/[^ \t]/.test(indent) || next - nextStart > indent.length) return undefined;
  if (belongsToStep(note) || isAllBelowHeading(text, note)) return undefined;
  const end = last + goneBelow(text.slice(last, nextStart), isParted(text, start));
  const lines = text
    .slice(start, last)
    .split(/\r\n|\n|\r/)
    .map((line) => line.replace(/^[ \t]+/, ""));
  return { lines, edit: { span: { start, end }, text: "" } };
}

/**
 * How much goes with the note: its line end and a blank line. Its neighbours stay parted, as a line
 * of text right below a step would go on with its paragraph.
 */
function goneBelow(gap: string, parted: boolean): number {
  return (parted ? TO_NEXT_BLOCK : TO_BLANK_LINE).exec(gap)![0].length;
}

const TO_NEXT_BLOCK = /^[ \t]*(?:(?:\r\n|\n|\r)[ \t]*){0,2}/;
const TO_BLANK_LINE = /^[ \t]*(?:(?:\r\n|\n|\r)(?=[ \t]*[\r\n]))?/;

/** It uses parts, takes a reading or bears a label: all that is its step's, not the next one's. */
function belongsToStep({ piece, fact }: NoteReading): boolean {
  const isInside = ({ start }: Span) => start >= fact.span.start && start < fact.span.end;
  const isBound = ({ role }: PartMark) => role === "label" || MOVING_ROLES.has(role);
  return (
    piece.marks.some(({ mark }) => isInside(mark.span) && isBound(mark)) ||
    piece.facts.facts.some(
      (one) => one.kind === "figure" && one.figure.reading && isInside(one.figure.span),
    )
  );
}

/** A heading that is no step would be left with nothing below it. */
function isAllBelowHeading(text: string, { piece, fact }: NoteReading): boolean {
  const above = piece.facts.facts.findLast(
    (one) => one.kind === "heading" && one.span.end <= fact.span.start,
  );
  if (above?.kind !== "heading") return false;
  if (piece.steps.some((step) => step.fact.span.start === above.span.start)) return false;
  const between = text.slice(piece.start + above.span.end, piece.start + fact.span.start);
  const below = text.slice(piece.start + fact.span.end).trimStart();
  return between.trim() === "" && (below === "" || HEADING.test(below));
}

/** With number signs or underlined. */
const HEADING = /^(?:#{1,6}(?:\s|$)|[^\r\n]+(?:\r\n|\n|\r) {0,3}(?:=+|-+)[ \t]*(?:[\r\n]|$))/;

function lineStart(text: string, offset: number): number {
  let at = offset;
  while (at > 0 && !/[\r\n]/.test(text[at - 1]!)) at--;
  return at;
}
