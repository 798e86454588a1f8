/** The templates of a guide's pieces, each rendered once for as long as the piece stays what it is. */
import type { Definition } from "mdast";
import type { GuideState } from "../../model/guideState.ts";
import type { PieceNode } from "../../model/pieceNode.ts";
import { parseMarkdown } from "../../syntax/markdown.ts";
import type { Picture } from "./holes.ts";
import { type PageContext, type PieceTemplate, renderTemplate } from "./template.ts";

export class Templates {
  readonly #contexts = new Map<string, PageContext>();
  readonly #templates = new Map<PieceNode, PieceTemplate>();

  constructor(guide: GuideState) {
    for (const { uri } of guide.pages) {
      const pieces = guide.pieces.filter(({ page }) => page.uri === uri);
      this.#contexts.set(uri, contextOf(pieces));
    }
  }

  of(piece: PieceNode): PieceTemplate {
    const known = this.#templates.get(piece);
    if (known) return known;
    const template = renderTemplate(sourceOf(piece), this.#contexts.get(piece.page.uri)!);
    this.#templates.set(piece, template);
    return template;
  }

  /** Labels that a page defines. */
  contextOf(pageUri: string): PageContext {
    return this.#contexts.get(pageUri)!;
  }

  /** The address that a page's link definition gives a label. */
  addressOf(pageUri: string, label: string): string | undefined {
    const definitions = this.#contexts.get(pageUri)?.definitions ?? [];
    return definitions.find(({ identifier }) => identifier === normalized(label))?.url;
  }

  /** All pictures that the pieces show, in order. */
  pictures(pieces: readonly PieceNode[]): { pageUri: string; url: string }[] {
    return pieces.flatMap((piece) => {
      const { blocks, footnotes } = this.of(piece);
      const holes = [...blocks, ...footnotes].flatMap(({ html }) => html);
      return holes
        .filter((hole): hole is Picture => typeof hole !== "string" && hole.kind === "picture")
        .map(({ url }) => ({ pageUri: piece.page.uri, url }));
    });
  }
}

/** As CommonMark compares labels (4.7): case and runs of white space make no difference. */
function normalized(label: string): string {
  return label.trim().replace(/\s+/g, " ").toLowerCase();
}

export function contextOf(pieces: readonly PieceNode[]): PageContext {
  const labels = new Set<string>();
  const footnotes = new Set<string>();
  for (const { facts } of pieces) {
    for (const label of facts.defines.links) labels.add(label);
    for (const label of facts.defines.footnotes) footnotes.add(label);
  }
  const found = { labels: [...labels], footnotes: [...footnotes] };
  const definitions = pieces
    .filter(({ facts }) => facts.defines.links.length > 0)
    .flatMap((piece) => definitionsIn(sourceOf(piece), found));
  return { ...found, definitions };
}

function definitionsIn(
  text: string,
  context: Pick<PageContext, "labels" | "footnotes">,
): Definition[] {
  const found: Definition[] = [];
  const visit = (nodes: readonly { type: string }[]) => {
    for (const node of nodes) {
      if (node.type === "definition") found.push(node as Definition);
      else if ("children" in node) visit(node.children as { type: string }[]);
    }
  };
  visit(parseMarkdown(text, context).children);
  return found;
}

export function sourceOf({ page, start, length }: PieceNode): string {
  return page.text.slice(start, start + length);
}
