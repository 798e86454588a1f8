/**
 * Markdown of guides: CommonMark with GFM's tables, footnotes, task lists, strikethrough and autolinks,
 * and with part marks and figures. Front matter is cut off before.
 */
import type { Nodes, Root } from "mdast";
import { fromMarkdown, type Extension as TreeExtension } from "mdast-util-from-markdown";
import { gfmFromMarkdown } from "mdast-util-gfm";
import type { SyntaxProblem } from "./dialect.ts";
import { labelSet } from "./labels.ts";
import { dialect } from "./marks/constructs.ts";
import { dialectFromMarkdown } from "./marks/tree.ts";
import { quickTree } from "./quick/blocks.ts";

/** Labels defined in other pieces of the same document, normalised as `definedLabels` gives them. */
export interface DefinedElsewhere {
  readonly labels: readonly string[];
  readonly footnotes: readonly string[];
}

/** Without the transform that finds autolinks in finished text: its nodes have no positions. */
const TREE: TreeExtension[] = [
  ...gfmFromMarkdown().map(({ transforms: _, ...extension }) => extension),
  dialectFromMarkdown,
];

/** The tree of a text. Spans of marks, figures and problems are offsets in `text`. */
export function parseMarkdown(text: string, options: DefinedElsewhere): Root {
  return quickTree(text, labelSet(options.labels)) ?? fullTree(text, options);
}

/** The tree of a text, whatever is in it; `quickTree` gives the same for the plainest. */
export function fullTree(text: string, options: DefinedElsewhere): Root {
  // micromark drops a leading byte-order mark without counting it; an extra one keeps offsets exact.
  const source = text.startsWith("\uFEFF") ? `\uFEFF${text}` : text;
  return fromMarkdown(source, {
    extensions: [dialect(source, options.labels, options.footnotes)],
    mdastExtensions: TREE,
  });
}

/**
 * Labels of the link definitions and footnotes in a tree, in the form in which they are looked up;
 * `addresses` are those of the links, in the same order.
 */
export function definedLabels(root: Root): {
  links: string[];
  addresses: string[];
  footnotes: string[];
} {
  const links: string[] = [];
  const addresses: string[] = [];
  const footnotes: string[] = [];
  for (const node of descendants(root)) {
    if (node.type === "definition") {
      links.push(node.identifier.toUpperCase());
      addresses.push(node.url);
    }
    if (node.type === "footnoteDefinition") footnotes.push(node.identifier.toUpperCase());
  }
  return { links, addresses, footnotes };
}

/** Marks that became a link definition or a link, such as `[R1]: done` and `[R1](4k7)`. */
export function definitionProblems(root: Root): SyntaxProblem[] {
  const problems: SyntaxProblem[] = [];
  for (const node of descendants(root)) {
    if (node.type !== "definition" && node.type !== "link") continue;
    if (node.data?.problem) problems.push(node.data.problem);
  }
  return problems;
}

/** All nodes in document order; without recursion, since hostile text nests deeply. */
export function* descendants(root: Root): Generator<Nodes> {
  const ahead: Nodes[] = [root];
  for (let node = ahead.pop(); node; node = ahead.pop()) {
    yield node;
    if ("children" in node) for (const child of node.children.toReversed()) ahead.push(child);
  }
}
