/** Trees of Markdown with marks and figures turned back to the text they are on a plain renderer. */
import type { ListItem, Nodes, Paragraph, Parent, Root, RootContent, Text } from "mdast";
import { fromMarkdown } from "mdast-util-from-markdown";
import { gfmFromMarkdown } from "mdast-util-gfm";
import { gfm } from "micromark-extension-gfm";
import { type DefinedElsewhere, parseMarkdown } from "../../server/src/syntax/markdown.ts";
import type {
  AlmostMarkNode,
  FigureNode,
  PartMarkNode,
} from "../../server/src/syntax/marks/tree.ts";

export const NO_LABELS: DefinedElsewhere = { labels: [], footnotes: [] };

export type DialectNode = PartMarkNode | FigureNode | AlmostMarkNode;

/** The tree that CommonMark and GFM alone give, without the transform that loses positions. */
export function plainTree(text: string): Root {
  const root = fromMarkdown(text, {
    extensions: [gfm()],
    mdastExtensions: gfmFromMarkdown().map(({ transforms: _, ...extension }) => extension),
  });
  endAtLineStarts(root);
  startAtWords(root, text);
  return root;
}

/**
 * A text that ends with a line end has its end at the next line's start or behind its indentation,
 * as micromark has looked ahead or not: any construct that was tried over the line end decides it.
 */
function endAtLineStarts(node: Nodes): void {
  if ("children" in node) for (const child of node.children) endAtLineStarts(child);
  else if (node.type === "text" && /[\r\n]$/.test(node.value)) {
    const { end } = node.position!;
    node.position!.end = { line: end.line, column: 1, offset: end.offset! - (end.column - 1) };
  }
}

/**
 * The library's task boxes count the white space behind the box as one column, so a text that
 * follows on the next line begins, by its tree, at a column that the box's line does not have.
 * It begins where its first word stands, behind indentation and quote signs.
 */
function startAtWords(node: Nodes, source: string): void {
  if (!("children" in node)) return;
  for (const child of node.children) startAtWords(child, source);
  const paragraph = node.type === "listItem" ? firstBehindBox(node) : undefined;
  const text = paragraph?.children[0];
  if (text?.type !== "text") return;
  const { offset } = text.position!.start;
  if (!/[\r\n]/.test(source[offset! - 1]!)) return;
  const start = offset! + /^\n?[ \t>]*/.exec(source.slice(offset))![0].length;
  const before = source.slice(0, start).split(/\r\n|\n|\r/);
  text.position!.start = { line: before.length, column: before.at(-1)!.length + 1, offset: start };
  paragraph!.position!.start = { ...text.position!.start };
}

function firstBehindBox({ checked, children: [first] }: ListItem): Paragraph | undefined {
  return typeof checked === "boolean" && first?.type === "paragraph" ? first : undefined;
}

/** Our tree as plain Markdown has it: neighbouring texts are one. */
export function flattened(text: string): Root {
  const root = parseMarkdown(text, NO_LABELS);
  flatten(root);
  endAtLineStarts(root);
  startAtWords(root, text);
  return root;
}

function flatten(node: Parent): void {
  const children: RootContent[] = [];
  for (const child of node.children as RootContent[]) {
    const next = isDialect(child) ? asText(child) : child;
    const last = children.at(-1);
    if (next.type === "text" && last?.type === "text") {
      last.value += next.value;
      last.position!.end = next.position!.end;
    } else children.push(next);
    if ("children" in next) flatten(next);
    if (next.type === "listItem") startBehindBox(next);
    if (next.type === "definition" || next.type === "link") delete next.data;
  }
  node.children = children;
}

/** The paragraph behind a task box begins at the box unless text opens it: GFM's tree does so. */
function startBehindBox(item: ListItem): void {
  const paragraph = firstBehindBox(item);
  const head = paragraph?.children[0];
  if (head?.type === "text") paragraph!.position!.start = { ...head.position!.start };
}

function asText(node: DialectNode): Text {
  return { type: "text", value: node.value, position: node.position! };
}

function isDialect(node: Nodes): node is DialectNode {
  return node.type === "partMark" || node.type === "figure" || node.type === "almostMark";
}

/** Marks, figures and near misses of a text, in order. */
export function dialectNodes(text: string, options = NO_LABELS): DialectNode[] {
  const found: DialectNode[] = [];
  const visit = (node: Nodes): void => {
    if (isDialect(node)) found.push(node);
    if ("children" in node) node.children.forEach(visit);
  };
  visit(parseMarkdown(text, options));
  return found;
}

/** The source of each mark, figure and near miss, as the spans of mark, figure and problem have it. */
export function dialectTexts(text: string, options = NO_LABELS): string[] {
  return dialectNodes(text, options).map((node) => {
    const { start, end } =
      node.type === "partMark"
        ? node.mark.span
        : node.type === "figure"
          ? node.figure.span
          : node.problem.span;
    return text.slice(start, end);
  });
}
