/**
 * The fix of `height-order`: moves a whole step to its place in the stage. Every line keeps its
 * bytes but for the number of its item; blank lines stay where they are.
 */
import type { Guide, ResolvedMark, Stage, Step } from "../../model/guide.ts";
import type { Part } from "../../model/parts.ts";
import type { Span, TextEdit } from "../../text/span.ts";
import type { BoardTops, Fix } from "../check.ts";
import { dependOnEachOther, marksOf } from "./dependencies.ts";
import { keepNumbers } from "./keepNumbers.ts";
import { type Purpose, textHoldsBack } from "./obstacles.ts";
import { readAsAlike, readsAlike } from "./readsAlike.ts";
import { readStretch, startOf } from "./stretch.ts";
import { hasPlace, laneOf, marksInOrder, turnsAt } from "./turns.ts";
import { type Misplaced, untangle } from "./untangle.ts";

/** A step that is no sub-step, with its sub-steps and their marks. */
interface Group {
  readonly step: Step;
  readonly steps: Step[];
  readonly marks: ResolvedMark[];
}

/** A move of `groups[from]` before what is `groups[to]` now; `to` may be one past the last. */
interface Move {
  readonly groups: readonly Group[];
  readonly from: number;
  readonly to: number;
}

/** The fix, or undefined where the move would not help or would do harm. */
export function moveStep(
  misplaced: Misplaced,
  stage: Stage,
  before: BoardTops,
  guide: Guide,
): Fix | undefined {
  const groups = groupsOf(stage);
  const from = groups.findIndex((group) => group.step === misplaced.resolved.step);
  if (from < 0) return undefined;
  const move = { groups, from, to: placeFor(misplaced, groups, from, before, guide) };
  if (move.to === from || move.to === from + 1) return undefined;
  if (!helps(misplaced, move, before, guide) || isBound(move, guide)) return undefined;
  const moved = editsFor(move, stage, guide, "height order");
  if (!moved) return undefined;
  const { uri, edits } = moved;
  return {
    title: "Move this step to its place in the stage",
    safe: false,
    edits: [{ uri, edits }],
  };
}

/** The edits of a page that move a step. */
export interface StepEdits {
  readonly uri: string;
  readonly edits: readonly TextEdit[];
  /** How much further on each character of the step stands after them; negative for a move up. */
  readonly shift: number;
}

/**
 * Edits that move the step, or the one that it is a sub-step of, past its neighbour: up (-1) or down
 * (1). It takes its pictures, notes and comments along. Undefined where there is no neighbour or the
 * text would not read as before.
 */
export function moveBy(step: Step, by: -1 | 1, guide: Guide): StepEdits | undefined {
  const groups = groupsOf(step.stage);
  const from = groups.findIndex((group) => group.steps.includes(step));
  const to = by === -1 ? from - 1 : from + 2;
  if (from < 0 || to < 0 || to > groups.length) return undefined;
  return editsFor({ groups, from, to }, step.stage, guide, "by hand");
}

/**
 * Edits that move a step before the one that applies power, above it in its stage. Undefined where either is
 * a sub-step, a part would be used before it is there, or the text would not read as before.
 */
export function moveBeforePower(step: Step, power: Step, guide: Guide): StepEdits | undefined {
  const groups = groupsOf(step.stage);
  const from = groups.findIndex((group) => group.step === step);
  const to = groups.findIndex((group) => group.steps.includes(power));
  if (from < 0 || to < 0 || to >= from) return undefined;
  const move = { groups, from, to };
  return isBound(move, guide) ? undefined : editsFor(move, step.stage, guide, "before power");
}

function groupsOf(stage: Stage): Group[] {
  const groups: Group[] = [];
  const home = new Map<Step, Group>();
  for (const step of stage.steps) {
    if (step.fact.depth === 0 || groups.length === 0) groups.push({ step, steps: [], marks: [] });
    groups.at(-1)!.steps.push(step);
    home.set(step, groups.at(-1)!);
  }
  for (const mark of marksInOrder(stage)) home.get(mark.step!)!.marks.push(mark);
  return groups;
}

/** Before the first step with a part that is taller and in order; else behind the last step. */
function placeFor(
  misplaced: Misplaced,
  groups: readonly Group[],
  from: number,
  before: BoardTops,
  guide: Guide,
): number {
  const { turns, kind } = misplaced;
  const height = (kind === "late" ? turns[0]! : turns.at(-1)!).height;
  const lane = laneOf(turns[0]!.part);
  const out = misplacedParts(groups, [lane], before, guide);
  const place = groups.findIndex(
    ({ marks }, i) =>
      i !== from &&
      marks.some((mark) =>
        turnsAt(mark, lane, guide).some((turn) => turn.height > height && !out.has(turn.part)),
      ),
  );
  return place < 0 ? groups.length : place;
}

/** Whether the move takes these parts off the list of those out of order and puts none on it. */
function helps(misplaced: Misplaced, move: Move, before: BoardTops, guide: Guide): boolean {
  const { groups, from, to } = move;
  const lanes = lanesOf(groups);
  const now = misplacedParts(groups, lanes, before, guide);
  for (const { part } of misplaced.turns) now.delete(part);
  const rest = groups.toSpliced(from, 1);
  const then = rest.toSpliced(to > from ? to - 1 : to, 0, groups[from]!);
  return [...misplacedParts(then, lanes, before, guide)].every((part) => now.has(part));
}

function misplacedParts(
  groups: readonly Group[],
  lanes: Iterable<string>,
  before: BoardTops,
  guide: Guide,
): Set<Part> {
  const marks = groups.flatMap((group) => group.marks);
  const parts = new Set<Part>();
  for (const lane of lanes) {
    for (const { turns } of untangle(marks, lane, before.get(lane), guide).misplaced) {
      for (const { part } of turns) parts.add(part);
    }
  }
  return parts;
}

function lanesOf(groups: readonly Group[]): Set<string> {
  const lanes = new Set<string>();
  for (const { marks } of groups) {
    for (const { items } of marks) {
      for (const { supplies } of items) {
        for (const supply of supplies) if (hasPlace(supply)) lanes.add(laneOf(supply));
      }
    }
  }
  return lanes;
}

function isBound({ groups, from, to }: Move, guide: Guide): boolean {
  const passed = to < from ? groups.slice(to, from) : groups.slice(from + 1, to);
  return dependOnEachOther(
    marksOf(groups[from]!.steps),
    marksOf(passed.flatMap((group) => group.steps)),
    guide,
  );
}

function editsFor(
  { groups, from, to }: Move,
  stage: Stage,
  guide: Guide,
  purpose: Purpose,
): StepEdits | undefined {
  const steps = groups.map((group) => group.step);
  const first = Math.min(from, to);
  const last = to > from ? to - 1 : from;
  const { page } = steps[from]!.piece;
  if (steps.slice(first, last + 1).some((step) => step.piece.page !== page)) return undefined;
  const stretch = readStretch(steps, first, last, stage, guide);
  const linesOf = (index: number) => stretch?.steps.find(({ step }) => step === steps[index]);
  const [moved, upper, lower] = [linesOf(from), linesOf(first), linesOf(last)];
  if (!stretch || !moved || !upper || !lower) return undefined;
  const up = to < from;
  const neighbour = linesOf(up ? from - 1 : from + 1)!;
  const passed = up
    ? { start: upper.lines.start, end: neighbour.lines.end }
    : { start: neighbour.lines.start, end: lower.lines.end };
  if (textHoldsBack(stretch, moved, passed, purpose)) return undefined;
  const text = page.text.toString();
  const edits = swap(text, moved.lines, passed);
  if (!readsAlike(stretch, moved.lines, passed, edits)) return undefined;
  const starts = steps.slice(first, last + 1).map(startOf);
  const numbered = keepNumbers(text, edits, starts, moved.lines);
  return {
    uri: page.uri,
    edits: readAsAlike(stretch, edits, numbered) ? numbered : edits,
    shift: up ? passed.start - moved.lines.start : passed.end - moved.lines.end,
  };
}

/** Exchanges two neighbouring runs of lines; what lies between them stays between them. */
function swap(text: string, moved: Span, passed: Span): TextEdit[] {
  const lines = text.slice(moved.start, moved.end);
  if (moved.start > passed.start) {
    const gap = text.slice(passed.end, moved.start);
    return [
      { span: { start: passed.start, end: passed.start }, text: lines + gap },
      { span: { start: passed.end, end: moved.end }, text: "" },
    ];
  }
  const gap = text.slice(moved.end, passed.start);
  return [
    { span: { start: moved.start, end: passed.start }, text: "" },
    { span: { start: passed.end, end: passed.end }, text: gap + lines },
  ];
}
