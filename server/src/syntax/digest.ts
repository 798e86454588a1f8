/** Reduces the tree of a piece to its facts; the tree itself is not kept. */
import type {
  Blockquote,
  Heading,
  Image,
  ImageReference,
  Link,
  List,
  ListItem,
  Node,
  Nodes,
  Parent,
  Root,
  RootContent,
  Table,
  TableRow,
} from "mdast";
import { readComments } from "./checkerComment.ts";
import type { SyntaxProblem } from "./dialect.ts";
import type { Fact, PieceFacts, TextFact, TextRun } from "./facts.ts";
import { readHazardNote } from "./hazardNote.ts";
import { readHtmlPictures } from "./htmlPictures.ts";
import { definedLabels, definitionProblems, parseMarkdown } from "./markdown.ts";
import { BracketTally } from "./marks/unclosed.ts";
import { readMentions } from "./mentions.ts";
import { endOf, movesParts, plainText, spanOf, startOf } from "./nodes.ts";

/** Labels that other pieces of the page define. */
export interface Labels {
  readonly links: readonly string[];
  readonly footnotes: readonly string[];
}

/**
 * Facts of `text` up to `candidate`; undefined when no root heading or item of a root ordered list
 * opens exactly there. Without a candidate all of `text` is read.
 */
export function digestPiece(
  text: string,
  candidate: number | undefined,
  labels: Labels,
): PieceFacts | undefined {
  const root = parseMarkdown(text, { labels: labels.links, footnotes: labels.footnotes });
  if (candidate !== undefined && !opensAt(root, candidate)) return undefined;
  return new Digester(text, candidate ?? text.length).digest(root);
}

function opensAt(root: Root, offset: number): boolean {
  const last = root.children.at(-1);
  if (!last) return false;
  if (last.type === "heading") return startOf(last) === offset;
  if (last.type !== "list" || !last.ordered) return false;
  const item = last.children.at(-1);
  return item !== undefined && startOf(item) === offset;
}

class Digester {
  readonly #text: string;
  readonly #end: number;
  readonly #facts: Fact[] = [];
  readonly #problems: SyntaxProblem[] = [];
  readonly #brackets: BracketTally;
  /** How many ordered lists enclose the current node. */
  #depth = 0;
  /** How many blocks enclose the current node. */
  #nesting = 0;
  /** How many quotes enclose the current node. */
  #quotes = 0;
  /** Runs of the block of text that is being read. */
  #runs: TextRun[] = [];

  constructor(text: string, end: number) {
    this.#text = text;
    this.#end = end;
    this.#brackets = new BracketTally(text);
  }

  digest(root: Root): PieceFacts {
    this.#blocks(root);
    const problems = [...this.#problems, ...definitionProblems(root)];
    return {
      facts: this.#facts,
      problems: problems
        .filter((problem) => problem.span.start < this.#end)
        .sort((a, b) => a.span.start - b.span.start),
      defines: definedLabels(root),
    };
  }

  #blocks(parent: Parent): void {
    this.#nesting++;
    for (const node of parent.children) {
      if (startOf(node) >= this.#end) break;
      this.#block(node as RootContent);
    }
    this.#nesting--;
  }

  #block(node: RootContent): void {
    switch (node.type) {
      case "heading":
        if (this.#nesting === 1) this.#heading(node);
        this.#leaf(node, node, "heading");
        return;
      case "paragraph":
        this.#leaf(node, node, "paragraph");
        return;
      case "table":
        this.#table(node);
        return;
      case "list":
        this.#list(node);
        return;
      case "listItem":
        this.#bullet(node);
        return;
      case "blockquote":
        this.#quote(node);
        return;
      case "html":
        this.#html(node, false);
        return;
      default:
        if ("children" in node) this.#blocks(node);
    }
  }

  #heading(node: Heading): void {
    const title = plainText(node).trim();
    this.#facts.push({ kind: "heading", span: spanOf(node), level: node.depth, title });
  }

  #list(list: List): void {
    if (!list.ordered) {
      this.#blocks(list);
      return;
    }
    this.#depth++;
    for (const item of list.children) {
      if (startOf(item) >= this.#end) break;
      this.#facts.push({
        kind: "step",
        span: spanOf(item),
        depth: this.#depth - 1,
        source: "item",
        certain: true,
      });
      this.#blocks(item);
    }
    this.#depth--;
  }

  /** A bullet is a step of its own where its first line marks parts. */
  #bullet(item: ListItem): void {
    const [first, ...others] = item.children;
    if (first?.type === "paragraph") this.#leaf(first, item, "bullet");
    else if (first) this.#block(first);
    for (const node of others) this.#block(node);
  }

  #quote(quote: Blockquote): void {
    const note = readHazardNote(quote, this.#text);
    if (note) this.#facts.push(note);
    this.#quotes++;
    this.#blocks(quote);
    this.#quotes--;
  }

  #table(table: Table): void {
    for (const row of table.children) {
      if (startOf(row) >= this.#end) break;
      this.#openStep(row, row);
      this.#row(row, row === table.children[0]);
    }
  }

  #row(row: TableRow, header: boolean): void {
    this.#facts.push({ kind: "row", span: spanOf(row), header, cells: row.children.map(spanOf) });
    for (const cell of row.children) this.#words(cell, "cell");
  }

  /** A block without blocks inside: `whole` is what becomes a step if it moves parts. */
  #leaf(node: Parent, whole: Node, block: TextFact["block"]): void {
    this.#openStep(node, whole);
    this.#words(node, block);
  }

  #openStep(node: Parent, whole: Node): void {
    const moves = this.#depth === 0 ? movesParts(node) : "no";
    if (moves !== "no") {
      const certain = moves === "yes";
      this.#facts.push({ kind: "step", span: spanOf(whole), depth: 0, source: "block", certain });
    }
  }

  #words(node: Parent, block: TextFact["block"]): void {
    const runs: TextRun[] = [];
    const quoted = this.#quotes > 0;
    this.#facts.push({ kind: "text", span: spanOf(node), block, quoted, runs });
    this.#runs = runs;
    this.#brackets.begin(quoted);
    this.#inlines(node);
    for (const problem of this.#brackets.end()) this.#problems.push(problem);
  }

  #run(kind: TextRun["kind"], node: Node): void {
    this.#runs.push({ kind, span: spanOf(node) });
  }

  #inlines(parent: Parent): void {
    for (const node of parent.children as Nodes[]) this.#inline(node);
  }

  #inline(node: Nodes): void {
    switch (node.type) {
      case "partMark":
        this.#run("mark", node);
        this.#facts.push({ kind: "mark", mark: node.mark });
        this.#problems.push(...(node.mark.problems ?? []));
        return;
      case "figure":
        this.#run("figure", node);
        this.#facts.push({ kind: "figure", figure: node.figure });
        this.#problems.push(...(node.figure.problems ?? []));
        return;
      case "almostMark":
        this.#problems.push(node.problem);
        if (node.value === "]") this.#brackets.closed();
        return;
      case "text":
        this.#run("text", node);
        this.#brackets.text(startOf(node), endOf(node));
        this.#add(readMentions(this.#text.slice(startOf(node), endOf(node)), startOf(node)));
        return;
      case "html":
        this.#html(node, true);
        return;
      case "inlineCode":
        this.#run("code", node);
        return;
      case "image":
      case "imageReference":
        this.#picture(node);
        return;
      case "link":
        if (this.#isAddress(node)) this.#run("address", node);
        else this.#inlines(node);
        return;
      default:
        if ("children" in node) this.#inlines(node);
    }
  }

  /** A link that shows its own address: `<https://…>`, a bare one, or the address as its text. */
  #isAddress(link: Link): boolean {
    if (this.#text[startOf(link)] !== "[") return true;
    const [first] = link.children;
    return first?.type === "text" && first.value === link.url;
  }

  #picture(node: Image | ImageReference): void {
    this.#run("picture", node);
    const target =
      node.type === "image" ? { url: node.url } : { label: node.identifier.toUpperCase() };
    this.#facts.push({ kind: "picture", span: spanOf(node), alt: node.alt ?? "", target });
  }

  #html(node: Node, inline: boolean): void {
    const start = startOf(node);
    const html = this.#text.slice(start, endOf(node));
    for (const { span, comment } of readComments(html, start)) {
      this.#facts.push({ kind: "comment", span, inline, comment });
    }
    this.#add(readHtmlPictures(html, start));
  }

  /** One by one: a call takes no more arguments than the stack has room for. */
  #add(facts: readonly Fact[]): void {
    for (const fact of facts) this.#facts.push(fact);
  }
}
