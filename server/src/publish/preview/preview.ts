/**
 * The guide as a row of blocks that follows its edits: the same head, contents, sections, steps and
 * notes as on the published page. Only what an edit changes is made anew.
 */
import type { GuideState } from "../../model/guideState.ts";
import type { PieceNode } from "../../model/pieceNode.ts";
import type { StageNode } from "../../model/stageNode.ts";
import type { Block } from "../blocks.ts";
import { Footnotes, type PictureSource } from "../fill/filler.ts";
import { escapeHtml } from "../html.ts";
import { contentsHtml, HeadingIds, headHtml, type SectionHead } from "../page/frame.ts";
import { needsHtml } from "../page/needs.ts";
import { pageWords } from "../words/words.ts";
import { KeptBlocks } from "./keptBlocks.ts";
import { ShownBlocks, type Splice } from "./patch.ts";
import { PieceBlocks, type Surroundings } from "./pieceBlocks.ts";
import { type BlockSource, type Place, placeOfText, sourceOfBlock } from "./places.ts";
import { KeptTemplates } from "./templates.ts";

export interface PreviewBlock {
  /** A `section` takes in the blocks behind it that are `inside`; one on `top` ends it. */
  readonly place: "section" | "inside" | "top";
  readonly html: string;
  /** Where its source begins; undefined for what stands for no place in the text. */
  readonly source: Source | undefined;
}

export interface Source {
  readonly piece: PieceNode;
  /** Offset in the piece. */
  readonly start: number;
}

/** `worth showing`: all is up to date but for what takes long and concerns the guide as a whole. */
export type PreviewPause = "worth showing" | undefined;

export class GuidePreview {
  readonly #templates = new KeptTemplates();
  readonly #pieces = new PieceBlocks(this.#templates);
  readonly #kept = new KeptBlocks();
  #shown = new ShownBlocks();
  #blocks: readonly PreviewBlock[] = [];
  #needs = "";
  #title: string | undefined;
  /** The row in the making, as long as there was no whole one yet. */
  #first: Row | undefined;
  #isComplete = false;

  /** As far as they are made; from the first time that all were, there are always all. */
  get blocks(): readonly PreviewBlock[] {
    return this.#first?.soFar() ?? this.#blocks;
  }

  get title(): string | undefined {
    return this.#title;
  }

  /** Brings the blocks up to date; yields after each piece. The guide must not change meanwhile. */
  *follow(guide: GuideState, pictures: PictureSource): Generator<PreviewPause, void, void> {
    this.#templates.update(guide);
    const row = new Row(guide, pictures, this.#kept);
    if (!this.#isComplete) this.#first = row;
    for (const piece of guide.pieces) {
      const isNew = !this.#templates.isKept(piece);
      row.add(piece, this.#pieces.of(piece, row.around));
      if (isNew) yield undefined;
    }
    this.#first = undefined;
    this.#isComplete = true;
    this.#title = row.title;
    this.#blocks = row.all(this.#needs, this.#pieces);
    yield "worth showing";
    const needs = needsHtml(guide, pageWords(guide.language));
    if (needs === this.#needs) return;
    this.#needs = needs;
    this.#blocks = row.all(needs, this.#pieces);
  }

  /** What changes since the last patch. */
  takePatch(): Splice[] {
    const { blocks } = this;
    // Begun anew after an edit, a first row may be behind what was shown of it.
    const isBehind = this.#first !== undefined && blocks.length < this.#shown.all.length;
    return isBehind ? [] : this.#shown.show(blocks);
  }

  /** The next patch begins anew. */
  forgetShown(): void {
    this.#shown = new ShownBlocks();
  }

  /** The block that shows a place of a page; undefined for a page of another guide. */
  find(guide: GuideState, uri: string, offset: number): Place | undefined {
    return placeOfText(this.#shown.all, guide, uri, offset);
  }

  /** Where the source of a block is; undefined for one that is gone or has none. */
  source(guide: GuideState, id: number): BlockSource | undefined {
    return sourceOfBlock(this.#shown.all, guide, id);
  }
}

/** The blocks in the making, piece by piece. */
class Row {
  readonly around: Surroundings;
  title: string | undefined;
  readonly #kept: KeptBlocks;
  readonly #stages: ReadonlyMap<unknown, StageNode>;
  readonly #ids = new HeadingIds();
  readonly #opening: PreviewBlock[] = [];
  readonly #body: PreviewBlock[] = [];
  readonly #sections: SectionHead[] = [];
  /** Whether no block has come yet: a heading of level 1 is the title then. */
  #isFirst = true;

  constructor(guide: GuideState, pictures: PictureSource, kept: KeptBlocks) {
    this.around = { guide, pictures, footnotes: new Footnotes() };
    this.title = guide.frontMatter.title?.value;
    this.#kept = kept;
    this.#stages = new Map(guide.stages.map((stage) => [stage.heading?.fact, stage]));
  }

  add(piece: PieceNode, blocks: readonly Block[]): void {
    for (const block of blocks) {
      if (block.kind === "heading") this.#addHeading(piece, block);
      else this.#push(this.#kept.plain(piece, block));
      this.#isFirst = false;
    }
  }

  #addHeading(piece: PieceNode, block: Block): void {
    const { facts } = piece.facts;
    const fact = facts.find((one) => one.kind === "heading" && one.span.start === block.start);
    const heading = fact?.kind === "heading" ? fact : undefined;
    if (!heading || block.level! > 2) {
      const id = heading && this.#ids.of(heading.title);
      this.#push(this.#kept.heading(piece, block, id));
    } else if (this.#isFirst && block.level === 1) {
      this.title ??= heading.title;
    } else {
      this.#open(piece, block, heading.title, this.#stages.get(heading));
    }
  }

  #push(block: PreviewBlock): void {
    (this.#sections.length > 0 ? this.#body : this.#opening).push(block);
  }

  #open(piece: PieceNode, block: Block, title: string, stage: StageNode | undefined): void {
    const kind = block.level === 1 ? "part" : "stage";
    const withSteps = kind === "stage" && stage && stage.steps.length > 0 ? stage : undefined;
    const id = this.#ids.of(title);
    const head: SectionHead = { kind, id, title, heading: block.html, stage: withSteps };
    this.#sections.push(head);
    this.#body.push(this.#kept.section(piece, block, head));
    if (withSteps) this.#body.push(this.#kept.intro(withSteps, this.around.guide));
  }

  soFar(): PreviewBlock[] {
    return [this.#head(), ...this.#opening].concat(this.#body);
  }

  all(needs: string, pieces: PieceBlocks): PreviewBlock[] {
    const { guide } = this.around;
    const contents = contentsHtml(this.#sections, pageWords(guide.language));
    const lists = [contents, needs].filter((html) => html !== "");
    const between = lists.map((html) => ({ place: "inside", html, source: undefined }) as const);
    const notes = this.#footnotes(pieces);
    // Spread, the thousands of the body would cost more than all that an edit makes anew.
    return [this.#head(), ...this.#opening, ...between].concat(this.#body, notes);
  }

  #head(): PreviewBlock {
    const { guide } = this.around;
    const html = headHtml(guide, this.title, "", pageWords(guide.language));
    return { place: "inside", html, source: undefined };
  }

  #footnotes(pieces: PieceBlocks): PreviewBlock[] {
    const { guide, footnotes } = this.around;
    const items: string[] = [];
    // A footnote may name another, which then comes behind it.
    for (let index = 0; index < footnotes.order.length; index++) {
      items.push(`<li id="note-${index + 1}">${this.#footnote(index, pieces)}</li>`);
    }
    if (items.length === 0) return [];
    const title = escapeHtml(pageWords(guide.language).footnotes);
    const html = `<section class="footnotes" aria-labelledby="notes"><h2 id="notes">${title}</h2>\n<ol>\n${items.join("\n")}\n</ol></section>`;
    return [{ place: "top", html, source: undefined }];
  }

  #footnote(index: number, pieces: PieceBlocks): string {
    const { pageUri, identifier } = this.around.footnotes.order[index]!;
    for (const piece of this.around.guide.pieces) {
      const { defines } = piece.facts;
      if (defines.footnotes.length === 0 || piece.page.uri !== pageUri) continue;
      const html = pieces.definedFootnote(piece, identifier);
      if (html) return pieces.footnote(piece, html, this.around, `n${index + 1}`);
    }
    return "";
  }
}
