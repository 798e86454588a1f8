/** Fixes that put a hazard note before a step. */
import type { Step } from "../../model/guide.ts";
import type { Language } from "../../text/language.ts";
import type { TextEdit } from "../../text/span.ts";
import { hazardName } from "../../trade/hazards/lexicon.ts";
import { noteTemplate } from "../../trade/hazards/templates.ts";
import type { Fix } from "../check.ts";
import type { Covered } from "./coverage.ts";
import type { NoteReading } from "./note.ts";

/** Writes a note to begin with before the step. */
export function insertNote({ trigger, hazard }: Covered, language: Language): Fix | undefined {
  const lines = noteTemplate(hazard, language);
  const at = lines && placeBefore(trigger.step);
  if (!lines || at === undefined) return undefined;
  const { page } = trigger.step.piece;
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
  const { lines, edit } = takeOut(text, late);
  if (at > edit.span.start) return undefined;
  const edits = [insertion(text, at, lines), edit];
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

/** A line that is a comment, with the blank lines below it. */
const COMMENT_ABOVE =
  /(?<=^|[\r\n])[ \t]*<!--(?:(?!-->)[^\r\n])*-->[ \t]*(?:\r\n|\r|\n)(?:[ \t]*(?:\r\n|\r|\n)){0,3}$/;

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
  const before = text.slice(Math.max(0, at - 200), at).replaceAll("\r\n", "\n");
  const parted = at === 0 || /[\r\n][ \t]*[\r\n]$/.test(before);
  const note = lines.map((line) => line + end).join("");
  return { span: { start: at, end: at }, text: `${parted ? "" : end}${note}${end}` };
}

/** The note's lines without their indentation, and the edit that takes them out. */
function takeOut(
  text: string,
  { piece, fact }: NoteReading,
): { lines: readonly string[]; edit: TextEdit } {
  const start = lineStart(text, piece.start + fact.span.start);
  const last = piece.start + fact.span.end;
  const rest = /^[ \t]*(?:(?:\r\n|\n|\r)[ \t]*){0,2}(?:(?<=[\r\n])|$)/.exec(text.slice(last));
  const end = last + (rest?.[0].length ?? 0);
  const lines = text
    .slice(start, last)
    .split(/\r\n|\n|\r/)
    .map((line) => line.replace(/^[ \t]+/, ""));
  return { lines, edit: { span: { start, end }, text: "" } };
}

function lineStart(text: string, offset: number): number {
  let at = offset;
  while (at > 0 && !/[\r\n]/.test(text[at - 1]!)) at--;
  return at;
}
