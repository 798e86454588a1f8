/**
 * The blocks of each piece, kept until something that they show has changed: what a piece shows
 * depends on its text, the numbers of its steps, and what its marks, figures and references mean.
 */
import type { GuideState } from "../../model/guideState.ts";
import type { PieceNode } from "../../model/pieceNode.ts";
import { type Block, blocksOf } from "../blocks.ts";
import { statedWhereDefined } from "../figures.ts";
import { type FillContext, Filler, type Footnotes, type PictureSource } from "../fill/filler.ts";
import type { Template } from "../piece/holes.ts";
import { pageWords } from "../words/words.ts";
import { type KeptTemplate, type KeptTemplates, sameItems } from "./templates.ts";

interface Kept {
  readonly template: KeptTemplate;
  /** Begins the ids in its blocks. */
  readonly serial: number;
  numbering: object;
  readonly numbers: string;
  /** What it shows of the rest of the guide. */
  readonly ground: readonly unknown[];
  readonly blocks: readonly Block[];
}

/** What the rest of the guide is, while its pieces are gone through in order. */
export interface Surroundings {
  readonly guide: GuideState;
  readonly pictures: PictureSource;
  readonly footnotes: Footnotes;
}

export class PieceBlocks {
  readonly #templates: KeptTemplates;
  readonly #kept = new WeakMap<PieceNode, Kept>();
  #lastSerial = 0;

  constructor(templates: KeptTemplates) {
    this.#templates = templates;
  }

  /** The piece's blocks as they are now; pieces must come in order, since footnotes are numbered so. */
  of(piece: PieceNode, around: Surroundings): readonly Block[] {
    const template = this.#templates.of(piece);
    const { numbering } = around.guide;
    const known = this.#kept.get(piece);
    const ground = groundOf(piece, template, around);
    const numbers = known?.numbering === numbering ? known.numbers : numbersOf(piece);
    if (
      known?.template === template &&
      known.numbers === numbers &&
      sameItems(known.ground, ground)
    ) {
      known.numbering = numbering;
      return known.blocks;
    }
    const serial = known?.serial ?? ++this.#lastSerial;
    const context = contextOf(around, `p${serial}`);
    const blocks = blocksOf(piece, template, new Filler(context, piece), context.words);
    this.#kept.set(piece, { template, serial, numbering, numbers, ground, blocks });
    return blocks;
  }

  definedFootnote(piece: PieceNode, identifier: string): Template | undefined {
    const { footnotes } = this.#templates.of(piece);
    return footnotes.find((one) => one.identifier === identifier)?.html;
  }

  /** A footnote's text as HTML. */
  footnote(piece: PieceNode, html: Template, around: Surroundings, prefix: string): string {
    return new Filler(contextOf(around, prefix), piece).fill(html);
  }
}

function contextOf({ guide, pictures, footnotes }: Surroundings, prefix: string): FillContext {
  let last = 0;
  return {
    guide,
    words: pageWords(guide.language),
    language: guide.language ?? "en",
    pictures,
    // Boxes of a preview are not ticked.
    keys: { of: ({ number }) => number },
    footnotes,
    freshId: () => `${prefix}-${++last}`,
  };
}

function numbersOf({ steps }: PieceNode): string {
  return steps.map(({ number }) => number).join(" ");
}

function groundOf(
  piece: PieceNode,
  template: KeptTemplate,
  { guide, pictures, footnotes }: Surroundings,
): unknown[] {
  const ground: unknown[] = [piece.uses];
  for (const { name } of piece.references) ground.push(guide.labels(name)[0]?.step?.number);
  if (piece.figures.length > 0) {
    for (const figure of guide.figures.ofPiece(piece)) {
      const { evaluation, definition } = figure;
      const recalled = statedWhereDefined(figure, guide);
      ground.push(evaluation, definition, definition?.evaluation, recalled);
    }
  }
  for (const url of template.pictures) ground.push(pictures.source(piece.page.uri, url));
  for (const identifier of template.named) {
    ground.push(footnotes.number(piece.page.uri, identifier));
  }
  return ground;
}
