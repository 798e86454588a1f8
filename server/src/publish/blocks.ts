/**
 * The guide as a flat row of blocks: headings, steps with what belongs to them, notes, and prose. Each
 * block comes from one piece, and a page, or a preview, is a row of them.
 */
import type { PieceNode, StepNode } from "../model/pieceNode.ts";
import type { Filler } from "./fill/filler.ts";
import { escapeHtml, numberId } from "./html.ts";
import type { Template } from "./piece/holes.ts";
import type { FlowBlock, PieceTemplate } from "./piece/template.ts";
import type { PageWords } from "./words/form.ts";
import { filled } from "./words/words.ts";

export interface Block {
  readonly kind: "heading" | "step" | "note" | "prose";
  /** Of a heading: 1 to 6. */
  readonly level: number | undefined;
  /** Where its source begins in the piece. */
  readonly start: number;
  /** Of a heading what it says, else the whole element. */
  readonly html: string;
}

/** A step that is being gathered. */
interface OpenStep {
  readonly step: StepNode;
  readonly start: number;
  readonly body: string[];
}

/** The blocks of a piece, in order. */
export function blocksOf(
  piece: PieceNode,
  template: PieceTemplate,
  filler: Filler,
  words: PageWords,
): Block[] {
  const blocks: Block[] = [];
  let open: OpenStep | undefined;
  const close = () => {
    if (open) blocks.push(stepBlock(open, filler, words));
    open = undefined;
  };
  for (const flow of template.blocks) {
    const { kind, span, level } = flow;
    const step = mayBeStep(flow)
      ? piece.steps.find((one) => one.fact.span.start === span.start)
      : undefined;
    if (kind === "heading" && (!step || level! < 3)) {
      close();
      blocks.push({ kind, level, start: span.start, html: filler.fill(flow.html) });
    } else if (step) {
      close();
      open = { step, start: span.start, body: [filler.fill(ownContent(flow))] };
    } else if (kind === "note" || holdsSteps(piece, flow)) {
      close();
      const html = filler.fill(flow.html);
      blocks.push({ kind: kind === "note" ? "note" : "prose", level, start: span.start, html });
    } else {
      const html = filler.fill(flow.html);
      if (open) open.body.push(html);
      else if (html !== "") blocks.push({ kind: "prose", level, start: span.start, html });
    }
  }
  close();
  return blocks;
}

function stepBlock({ step, start, body }: OpenStep, filler: Filler, words: PageWords): Block {
  const { number } = step;
  const label = escapeHtml(filled(words.step, number));
  const html = `<div class="step" id="step-${numberId(number)}" role="group" aria-label="${label}">${filler.label(step)}<div class="body">${body.join("\n")}</div></div>`;
  return { kind: "step", level: undefined, start, html };
}

/** Without the number that the step has in its margin; a heading as the element it is. */
function ownContent({ kind, level, html, span }: FlowBlock): Template {
  const rest = html.filter(
    (part) => typeof part === "string" || part.kind !== "tick" || part.start !== span.start,
  );
  return kind === "heading" ? [`<h${level}>`, ...rest, `</h${level}>`] : rest;
}

/** Blocks that are a step as a whole; tables and lists of bullets hold steps. */
function mayBeStep({ kind }: FlowBlock): boolean {
  return kind === "item" || kind === "heading" || kind === "paragraph";
}

function holdsSteps(piece: PieceNode, { span }: FlowBlock): boolean {
  return piece.steps.some(
    ({ fact }) => fact.span.start >= span.start && fact.span.start < span.end,
  );
}
