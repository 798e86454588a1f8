/**
 * The preview's blocks, the same objects for as long as they show the same: after an edit all but a
 * few are, and what is the same object needs neither be made nor compared.
 */
import type { GuideState } from "../../model/guideState.ts";
import type { PieceNode } from "../../model/pieceNode.ts";
import type { StageNode } from "../../model/stageNode.ts";
import type { Block } from "../blocks.ts";
import { escapeHtml } from "../html.ts";
import { type SectionHead, sectionTitle, stageIntro } from "../page/frame.ts";
import { pageWords } from "../words/words.ts";
import type { PreviewBlock } from "./preview.ts";

/** A block of the preview, and what it shows beside the piece's own block. */
interface Kept {
  readonly id: string | undefined;
  readonly number: number | undefined;
  readonly shown: PreviewBlock;
}

export class KeptBlocks {
  readonly #plain = new WeakMap<Block, PreviewBlock>();
  readonly #headings = new WeakMap<Block, Kept>();
  readonly #intros = new WeakMap<StageNode, { supplyState: object; shown: PreviewBlock }>();

  /** A block that shows nothing but itself. */
  plain(piece: PieceNode, block: Block): PreviewBlock {
    const known = this.#plain.get(block);
    if (known) return known;
    const { html } = block;
    const shown: PreviewBlock = { place: "inside", html, source: { piece, start: block.start } };
    this.#plain.set(block, shown);
    return shown;
  }

  /** A heading inside a section; `id`: what it is found by. */
  heading(piece: PieceNode, block: Block, id: string | undefined): PreviewBlock {
    const { level, html, start } = block;
    return this.#heading(block, id, undefined, () => {
      const own = id === undefined ? "" : ` id="${escapeHtml(id)}"`;
      const whole = `<h${level}${own}>${html}</h${level}>`;
      return { place: "inside", html: whole, source: { piece, start } };
    });
  }

  /** A heading that opens a section. */
  section(piece: PieceNode, block: Block, head: SectionHead): PreviewBlock {
    const { kind, id, stage } = head;
    return this.#heading(block, id, stage?.number, () => {
      const own = stage ? ` id="stage-${stage.number}"` : "";
      const html = `<section class="${kind}"${own} aria-labelledby="${escapeHtml(id)}">${sectionTitle(head)}</section>`;
      return { place: "section", html, source: { piece, start: block.start } };
    });
  }

  /** Line and table of a stage, kept while its steps and what becomes of its supplies stay. */
  intro(stage: StageNode, guide: GuideState): PreviewBlock {
    const known = this.#intros.get(stage);
    const { supplyState } = stage;
    if (known?.supplyState === supplyState) return known.shown;
    const html = stageIntro(stage, guide, pageWords(guide.language));
    const shown: PreviewBlock = { place: "inside", html, source: undefined };
    this.#intros.set(stage, { supplyState, shown });
    return shown;
  }

  #heading(
    block: Block,
    id: string | undefined,
    number: number | undefined,
    make: () => PreviewBlock,
  ): PreviewBlock {
    const known = this.#headings.get(block);
    if (known && known.id === id && known.number === number) return known.shown;
    const shown = make();
    this.#headings.set(block, { id, number, shown });
    return shown;
  }
}
