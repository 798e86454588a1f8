/**
 * The templates of a guide's pieces, kept while the guide is edited: one is good for as long as the
 * text of its piece, and the link definitions that the text looks up, stay what they are.
 */
import type { GuideState } from "../../model/guideState.ts";
import type { PieceNode } from "../../model/pieceNode.ts";
import type { Hole } from "../piece/holes.ts";
import { type PageContext, type PieceTemplate, renderTemplate } from "../piece/template.ts";
import { contextOf, sourceOf } from "../piece/templates.ts";

export interface KeptTemplate extends PieceTemplate {
  /** Identifiers of the footnotes that its blocks name, in order. */
  readonly named: readonly string[];
  /** Addresses of the pictures that its blocks show. */
  readonly pictures: readonly string[];
}

interface KeptContext {
  /** Pieces that define links or footnotes. */
  readonly defining: readonly PieceNode["cut"][];
  readonly context: PageContext;
}

export class KeptTemplates {
  readonly #contexts = new Map<string, KeptContext>();
  /** By what is cut from the text, which outlives changes of the parts list. */
  readonly #templates = new WeakMap<PieceNode["cut"], KeptTemplate>();

  /** Takes in what the pages define now. */
  update(guide: GuideState): void {
    for (const { uri } of guide.pages) {
      const pieces = guide.pieces.filter(({ page }) => page.uri === uri);
      const defining = pieces.filter(defines).map(({ cut }) => cut);
      const known = this.#contexts.get(uri);
      if (known && sameItems(known.defining, defining)) continue;
      const context = contextOf(pieces);
      this.#contexts.set(uri, { defining, context });
      if (known) this.#drop(pieces, changedLabels(known.context, context));
    }
  }

  isKept(piece: PieceNode): boolean {
    return this.#templates.has(piece.cut);
  }

  of(piece: PieceNode): KeptTemplate {
    const known = this.#templates.get(piece.cut);
    if (known) return known;
    const { context } = this.#contexts.get(piece.page.uri)!;
    const template = kept(renderTemplate(sourceOf(piece), context));
    this.#templates.set(piece.cut, template);
    return template;
  }

  #drop(pieces: readonly PieceNode[], labels: readonly string[]): void {
    if (labels.length === 0) return;
    for (const piece of pieces) {
      const text = sourceOf(piece).replace(/\s+/g, " ").toLowerCase().toUpperCase();
      const looksUp = labels.some((one) => text.includes(`[${one}`) || text.includes(`${one}]`));
      if (looksUp) this.#templates.delete(piece.cut);
    }
  }
}

function kept(template: PieceTemplate): KeptTemplate {
  const holes = template.blocks
    .flatMap(({ html }) => html)
    .filter((part): part is Hole => typeof part !== "string");
  return {
    ...template,
    named: holes.flatMap((hole) => (hole.kind === "footnote" ? [hole.identifier] : [])),
    pictures: holes.flatMap((hole) => (hole.kind === "picture" ? [hole.url] : [])),
  };
}

function defines({ facts: { defines } }: PieceNode): boolean {
  return defines.links.length + defines.footnotes.length > 0;
}

/** Labels of links that lead elsewhere now, as texts are folded. */
function changedLabels(before: PageContext, after: PageContext): string[] {
  const [old, now] = [targets(before), targets(after)];
  const labels = new Set([...old.keys(), ...now.keys()]);
  return [...labels].filter((label) => old.get(label) !== now.get(label));
}

/** Of several definitions of one label the first counts. */
function targets({ definitions }: PageContext): Map<string, string> {
  const found = new Map<string, string>();
  for (const { identifier, url, title } of definitions) {
    const label = identifier.toLowerCase().toUpperCase();
    if (!found.has(label)) found.set(label, `${url}\n${title ?? ""}`);
  }
  return found;
}

export function sameItems(a: readonly unknown[], b: readonly unknown[]): boolean {
  return a.length === b.length && a.every((one, index) => one === b[index]);
}
