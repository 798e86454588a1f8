/**
 * A piece of the guide as HTML, from its text alone. What depends on anything else is a hole, so a
 * piece is rendered once and filled as often as the guide around it changes.
 */
import type { Element, ElementContent, Root, RootContent } from "hast";
import { toHtml } from "hast-util-to-html";
import type { Definition } from "mdast";
import { toHast } from "mdast-util-to-hast";
import { parseMarkdown } from "../../syntax/markdown.ts";
import type { Span } from "../../text/span.ts";
import { withAuthorHtml } from "./authorHtml.ts";
import { clean } from "./clean.ts";
import { PieceHandlers } from "./handlers.ts";
import { HOLE_TAG, Holes, type Template, withoutHoleSigns } from "./holes.ts";

/** A block at the root of the piece; each item of a root ordered list is one. */
export interface FlowBlock {
  /** `block`: any other, such as a table, whose first row may be a step though it is none itself. */
  readonly kind: "heading" | "item" | "note" | "paragraph" | "block";
  /** Of its source in the piece. */
  readonly span: Span;
  /** Of a heading: 1 to 6. */
  readonly level: number | undefined;
  /** Of a heading or item what it contains, else the whole element. */
  readonly html: Template;
}

export interface PieceTemplate {
  readonly blocks: readonly FlowBlock[];
  readonly footnotes: readonly { readonly identifier: string; readonly html: Template }[];
}

/** What a piece looks up in the rest of its page. */
export interface PageContext {
  readonly labels: readonly string[];
  readonly footnotes: readonly string[];
  /** The page's link definitions, the first of each label. */
  readonly definitions: readonly Definition[];
}

/** Never throws; `text` is the whole piece. */
export function renderTemplate(text: string, context: PageContext): PieceTemplate {
  const { labels, footnotes } = context;
  const tree = parseMarkdown(text, { labels, footnotes });
  tree.children.push(...context.definitions);
  const holes = new Holes();
  const made = new PieceHandlers(text, holes);
  const hast = toHast(tree, { allowDangerousHtml: true, handlers: made.handlers }) as Root;
  const notes = made.footnotes.map((footnote) => ({
    identifier: footnote.identifier,
    html: finish({ type: "root", children: footnote.children }, holes),
  }));
  return { blocks: blocksOf(clean(withAuthorHtml(hast)), holes), footnotes: notes };

  function finish(root: Root, holes: Holes): Template {
    return write(clean(withAuthorHtml(root)).children, holes);
  }
}

function blocksOf(root: Root, holes: Holes): FlowBlock[] {
  const blocks: FlowBlock[] = [];
  for (const node of root.children) {
    if (node.type !== "element") {
      if (node.type === "text" && node.value.trim() !== "")
        blocks.push(block("block", node, [node]));
    } else if (node.data?.flow === "heading") {
      blocks.push({ ...block("heading", node, node.children), level: Number(node.tagName[1]) });
    } else if (node.data?.flow === "steps") {
      blocks.push(...itemsOf(node));
    } else {
      const other = node.tagName === "p" ? "paragraph" : "block";
      blocks.push(block(node.data?.flow === "note" ? "note" : other, node, [node]));
    }
  }
  return blocks;

  function itemsOf(list: Element): FlowBlock[] {
    const items = list.children.filter((child) => child.type === "element");
    // The first child is the tick, which a step of the page has in its margin.
    return items.map((item) => block("item", item, item.children.slice(1)));
  }

  function block(
    kind: FlowBlock["kind"],
    node: RootContent,
    content: readonly RootContent[],
  ): FlowBlock {
    // An element of the author's has no place of its own: it stands behind the block before.
    const before = blocks.at(-1)?.span.end ?? 0;
    const { start, end } = node.position ?? {};
    const span = { start: start?.offset ?? before, end: end?.offset ?? before };
    return { kind, span, level: undefined, html: write(content, holes) };
  }
}

/** The nodes as HTML; only now nodes of ours stand where the holes are. */
function write(nodes: readonly RootContent[], holes: Holes): Template {
  const root: Root = { type: "root", children: nodes.map((node) => finished(node, holes)) };
  return holes.cut(toHtml(root, { allowDangerousHtml: true }).trim());
}

function finished(node: RootContent, holes: Holes): RootContent {
  if (node.type === "text") return { ...node, value: withoutHoleSigns(node.value) };
  if (node.type !== "element") return node;
  if (node.tagName === HOLE_TAG) return holes.sign(node);
  if (node.tagName === "img") return holes.sign(pictureOf(node, holes));
  const children = node.children.map((child) => finished(child, holes) as ElementContent);
  const properties = node.tagName === "a" ? withAnchor(node.properties) : node.properties;
  return { ...node, properties: unsigned(properties), children };
}

function unsigned(properties: Element["properties"]): Element["properties"] {
  const entries = Object.entries(properties).map(([name, value]) => [
    name,
    typeof value === "string" ? withoutHoleSigns(value) : value,
  ]);
  return Object.fromEntries(entries);
}

function pictureOf({ properties }: Element, holes: Holes): Element {
  const { src, alt, title, width } = properties;
  return holes.element({
    kind: "picture",
    url: String(src ?? ""),
    alt: String(alt ?? ""),
    title: title === undefined ? undefined : String(title),
    width: /^\d{1,4}$/.test(String(width)) ? Number(width) : undefined,
  });
}

/** Links inside the page go to its headings, whose ids have a prefix of ours. */
function withAnchor({ href, ...rest }: Element["properties"]): Element["properties"] {
  if (typeof href !== "string") return rest;
  if (href.startsWith("#")) return { ...rest, href: `#h-${href.slice(1)}` };
  return { ...rest, href, rel: ["noreferrer"] };
}
