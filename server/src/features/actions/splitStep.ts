/** Splits a step in two where a sentence begins, below the same list. */
import type { GuideState } from "../../model/guideState.ts";
import type { StepNode } from "../../model/pieceNode.ts";
import { shift, type TextEdit } from "../../text/span.ts";
import type { Action, Selection } from "./action.ts";
import { stepAt } from "./stepAt.ts";

const MARKER = /^(\d{1,9})([.)])([ \t]+)/;

/** The cursor's sentence, where it is not the first of the step's paragraph, becomes a step. */
export function* splitStep(guide: GuideState, { uri, start }: Selection): Iterable<Action> {
  const step = stepAt(guide, uri, start);
  if (step?.fact.source !== "item") return;
  const { piece, fact } = step;
  const at = start - piece.start;
  const block = step.prose.find((one) => one.instructs);
  if (!block || at < block.fact.span.start || at > block.fact.span.end) return;
  const index = block.sentences.findLastIndex((sentence) => sentence.start <= at);
  const [before, sentence] = [block.sentences[index - 1], block.sentences[index]];
  if (!before || !sentence) return;
  const source = (from: number, to: number) =>
    piece.page.text.slice(piece.start + from, piece.start + to);
  const from = beginning(source(before.start, sentence.start)) + before.start;
  const marker = MARKER.exec(source(fact.span.start, fact.span.start + 20));
  if (!marker) return;
  const indent = indentOf(source(0, fact.span.start));
  if (indent === undefined) return;
  const gap = /[ \t\r\n>]*$/.exec(source(before.start, from))![0].length;
  const text = `${lineEnd(source(0, piece.length))}${indent}${nextMarker(marker)}`;
  const span = shift({ start: from - gap, end: from }, piece.start);
  yield {
    title: "Make a step of its own from this sentence on",
    kind: "rewrite",
    edits: [{ uri, edits: [{ span, text }, ...countOn(step, marker)] }],
  };
}

/**
 * The items below count on by one, as far as they counted one by one; not where a longer number would
 * need another indentation below it.
 */
function* countOn(
  { piece, fact, stage }: StepNode,
  [, first]: RegExpExecArray,
): Iterable<TextEdit> {
  let number = Number(first);
  for (const other of stage.steps.slice(stage.steps.findIndex((one) => one.fact === fact) + 1)) {
    if (other.piece.page !== piece.page || other.fact.depth < fact.depth) return;
    if (other.fact.depth > fact.depth) continue;
    const start = other.piece.start + other.fact.span.start;
    const marker = MARKER.exec(piece.page.text.slice(start, start + 20));
    const next = String(++number + 1);
    if (marker?.[1] !== String(number) || next.length !== first!.length) return;
    yield { span: { start, end: start + marker[1].length }, text: next };
  }
}

/** Marks, quotes and signs of emphasis before a sentence's first word belong to it. */
function beginning(between: string): number {
  const stop = /^.*[.!?…:]["'”’»)\]*_]*(?=\s)/su.exec(between);
  const from = stop ? stop[0].length : between.length;
  return from + /^\s*/.exec(between.slice(from))![0].length;
}

/** What stands before the marker on its line; undefined where that is more than indentation. */
function indentOf(before: string): string | undefined {
  const line = before.slice(Math.max(before.lastIndexOf("\n"), before.lastIndexOf("\r")) + 1);
  return /^[ \t>]*$/.test(line) ? line : undefined;
}

/** The next number, unless it is longer: lines below keep their indentation. */
function nextMarker([, number, sign, space]: RegExpExecArray): string {
  const next = String(Number(number) + 1);
  return `${next.length === number!.length ? next : number}${sign}${space}`;
}

function lineEnd(text: string): string {
  return /\r\n|\n|\r/.exec(text)?.[0] ?? "\n";
}
