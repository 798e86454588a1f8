/**
 * Labels of links and footnotes count in their page. Put into one file, a label that an earlier page
 * defines too would mean something else, so it gets the page's number behind it.
 */
import type { Nodes } from "mdast";
import type { GuideState } from "../../model/guideState.ts";
import type { PieceNode } from "../../model/pieceNode.ts";
import { parseMarkdown } from "../../syntax/markdown.ts";
import { spanOf } from "../../syntax/nodes.ts";
import type { TextEdit } from "../../text/span.ts";
import type { PageContext } from "../piece/template.ts";
import type { Templates } from "../piece/templates.ts";

export class PageLabels {
  readonly #contexts = new Map<string, PageContext>();
  /** By page, the labels that earlier pages define as well; footnotes with `^`. */
  readonly #taken = new Map<string, ReadonlySet<string>>();
  readonly #numbers = new Map<string, number>();

  constructor(guide: GuideState, templates: Templates) {
    const before = new Set<string>();
    for (const [index, { uri }] of guide.pages.entries()) {
      const context = templates.contextOf(uri);
      const own = [...context.labels, ...context.footnotes.map((label) => `^${label}`)].map(folded);
      this.#contexts.set(uri, context);
      this.#taken.set(uri, new Set(own.filter((label) => before.has(label))));
      this.#numbers.set(uri, index + 1);
      for (const label of own) before.add(label);
    }
  }

  /** Edits to the piece's text that give its labels names of their own. */
  edits(piece: PieceNode, source: string): TextEdit[] {
    const { uri } = piece.page;
    const taken = this.#taken.get(uri)!;
    if (taken.size === 0) return [];
    const edits: TextEdit[] = [];
    const number = this.#numbers.get(uri)!;
    visit(parseMarkdown(source, this.#contexts.get(uri)!), (node) => {
      const edit = renamed(node, source, taken, number);
      if (edit) edits.push(edit);
    });
    return edits;
  }
}

function renamed(
  node: Nodes,
  source: string,
  taken: ReadonlySet<string>,
  number: number,
): TextEdit | undefined {
  const { start, end } = spanOf(node);
  switch (node.type) {
    case "footnoteReference":
    case "footnoteDefinition":
      if (!taken.has(folded(`^${node.identifier}`))) return undefined;
      return behindLabel(source.indexOf("]", start), number);
    case "definition":
      if (!taken.has(folded(node.identifier))) return undefined;
      return behindLabel(source.indexOf("]:", start), number);
    case "linkReference":
    case "imageReference": {
      if (!taken.has(folded(node.identifier))) return undefined;
      if (node.referenceType === "full") return behindLabel(end - 1, number);
      const text = `${node.label}-${number}`;
      if (node.referenceType === "collapsed") return behindLabel(end - 1, text);
      return behindLabel(end, `[${text}]`);
    }
    default:
      return undefined;
  }
}

function behindLabel(at: number, addition: number | string): TextEdit {
  return {
    span: { start: at, end: at },
    text: typeof addition === "number" ? `-${addition}` : addition,
  };
}

function visit(node: Nodes, enter: (node: Nodes) => void): void {
  enter(node);
  if ("children" in node) for (const child of node.children) visit(child, enter);
}

function folded(label: string): string {
  return label.trim().replace(/\s+/g, " ").toLowerCase();
}
