/**
 * How Markdown and the dialect become HTML. What depends on more than the text of the piece becomes a
 * hole. Everything made here is cleaned together with the author's HTML, so it holds no more than an
 * author could write.
 */
import type { Element, ElementContent, Text } from "hast";
import type {
  Blockquote,
  FootnoteDefinition,
  Heading,
  List,
  ListItem,
  Nodes,
  Paragraph,
  Parent,
  Parents,
  PhrasingContent,
  Table,
  TableRow,
} from "mdast";
import { defaultHandlers, type Handlers, type State } from "mdast-util-to-hast";
import type { PartMark } from "../../syntax/dialect.ts";
import type { AlmostMarkNode, FigureNode, PartMarkNode } from "../../syntax/marks/tree.ts";
import { readMentions } from "../../syntax/mentions.ts";
import { movesParts, startOf } from "../../syntax/nodes.ts";
import { keepUnits } from "../html.ts";
import { standsAlone, touchesAnother } from "../standsAlone.ts";
import type { Hole, Holes } from "./holes.ts";
import { readOpening } from "./quoteOpening.ts";

declare module "hast" {
  interface ElementData {
    /** The block is one of the guide's own, not to be swallowed by an author's open element. */
    flow?: "heading" | "steps" | "note";
  }
}

export interface Footnote {
  readonly identifier: string;
  readonly children: ElementContent[];
}

/** Turns the tree of one piece into HTML's tree. */
export class PieceHandlers {
  readonly footnotes: Footnote[] = [];
  readonly #source: string;
  readonly #holes: Holes;
  /** How many ordered lists enclose the current node. */
  #depth = 0;
  /** What follows the current block of text. */
  #below: Element[] = [];

  constructor(source: string, holes: Holes) {
    this.#source = source;
    this.#holes = holes;
  }

  get handlers(): Handlers {
    return {
      partMark: (_, node: PartMarkNode) => this.#apart(node, this.#mark(node.mark)),
      figure: (_, node: FigureNode) => this.#apart(node, this.#figure(node)),
      almostMark: (_, node: AlmostMarkNode): Text => ({ type: "text", value: node.value }),
      text: (state, node) => this.#words(defaultHandlers.text(state, node) as Text),
      paragraph: (state, node: Paragraph) => this.#paragraph(state, node),
      heading: (state, node: Heading) => this.#heading(state, node),
      list: (state, node: List) => this.#list(state, node),
      listItem: (state, node: ListItem, parent) => this.#item(state, node, parent),
      table: (state, node: Table) => this.#table(state, node),
      blockquote: (state, node: Blockquote) => this.#quote(state, node),
      footnoteReference: (_, node) =>
        this.#hole({ kind: "footnote", identifier: node.identifier.toUpperCase() }),
      footnoteDefinition: (state, node: FootnoteDefinition) => {
        const children = state.wrap(state.all(node), true);
        this.footnotes.push({ identifier: node.identifier.toUpperCase(), children });
        return undefined;
      },
    };
  }

  #hole(hole: Hole): Element {
    return this.#holes.element(hole);
  }

  #mark(mark: PartMark): Element {
    if (mark.role === "match") this.#below.push(this.#hole({ kind: "worksheet", mark }));
    const alone = standsAlone(this.#source, mark.span.start);
    return this.#hole({ kind: "mark", mark, alone });
  }

  #figure({ figure }: FigureNode): Element {
    if (figure.reading) this.#below.push(this.#hole({ kind: "reading", figure }));
    return this.#hole({ kind: "figure", figure });
  }

  /** What a mark or figure has become, with a space before it where it needs one. */
  #apart(node: Nodes, made: Element): ElementContent[] {
    return touchesAnother(this.#source, startOf(node)) ? [plain(" "), made] : [made];
  }

  #words(written: Text): ElementContent[] {
    const text: Text = { ...written, value: keepUnits(written.value) };
    const parts: ElementContent[] = [];
    let from = 0;
    for (const { name, span } of readMentions(text.value, 0)) {
      if (span.start > from) parts.push(plain(text.value.slice(from, span.start)));
      parts.push(this.#hole({ kind: "mention", name }));
      from = span.end;
    }
    if (from === 0) return [text];
    if (from < text.value.length) parts.push(plain(text.value.slice(from)));
    return parts;
  }

  /** The number of the step that the block may be; `whole` is what becomes the step. */
  #tick(block: Parent, whole: Nodes): Element[] {
    if (this.#depth > 0 || movesParts(block) === "no") return [];
    return [this.#hole({ kind: "tick", start: startOf(whole), as: "inline" })];
  }

  /** The element of a block of text, and what belongs below it. */
  #leaf(state: State, node: Nodes, element: Element): Element[] {
    state.patch(node, element);
    const below = this.#below;
    this.#below = [];
    for (const one of below) state.patch(node, one);
    return [element, ...below];
  }

  #paragraph(state: State, node: Paragraph): Element[] {
    const children = state.all(node);
    const pictures = children.filter(
      (child) => child.type === "element" && child.tagName === "img",
    );
    const onlyPictures = children.every(
      (child) => pictures.includes(child) || (child.type === "text" && child.value.trim() === ""),
    );
    if (pictures.length > 0 && onlyPictures) return this.#leaf(state, node, figureOf(pictures));
    return this.#leaf(state, node, element("p", [...this.#tick(node, node), ...children]));
  }

  #heading(state: State, node: Heading): Element[] {
    const tick = this.#tick(node, node);
    const heading = element(`h${node.depth}`, [...tick, ...state.all(node)]);
    heading.data = { flow: "heading" };
    return this.#leaf(state, node, heading);
  }

  #list(state: State, node: List): Element {
    if (!node.ordered) return defaultHandlers.list(state, node) as Element;
    this.#depth++;
    const list = element("ol", state.wrap(state.all(node), true));
    this.#depth--;
    list.properties.className = ["substeps"];
    list.data = { flow: "steps" };
    state.patch(node, list);
    return list;
  }

  #item(state: State, node: ListItem, parent: Parents | undefined): Element {
    if (parent?.type === "list" && parent.ordered) {
      const tick = this.#hole({ kind: "tick", start: startOf(node), as: "inline" });
      const item = element("li", [tick, ...state.wrap(state.all(node), true)]);
      state.patch(node, item);
      return item;
    }
    const [first, ...rest] = node.children;
    const words = first?.type === "paragraph" ? first : undefined;
    const box = typeof node.checked === "boolean" ? [plain(node.checked ? "☑ " : "☐ ")] : [];
    const head = words
      ? this.#leaf(
          state,
          node,
          element("p", [...this.#tick(words, node), ...box, ...state.all(words)]),
        )
      : [];
    const blocks = (words ? rest : node.children).flatMap((child) => blocksOf(state, child, node));
    const item = element("li", state.wrap([...tight(head, parent), ...blocks], false));
    state.patch(node, item);
    return item;
  }

  #table(state: State, table: Table): Element {
    const ticked = this.#depth === 0 && table.children.some((row) => movesParts(row) !== "no");
    const rows = table.children.map((row, index) =>
      this.#row(state, row, index === 0, table, ticked),
    );
    const [head, ...body] = rows;
    const parts = [element("thead", [head!])];
    if (body.length > 0) parts.push(element("tbody", state.wrap(body, true)));
    const made = element("table", state.wrap(parts, true));
    state.patch(table, made);
    return made;
  }

  #row(state: State, row: TableRow, isHead: boolean, { align }: Table, ticked: boolean): Element {
    const count = Math.max(align?.length ?? 0, row.children.length);
    const cells: Element[] = [];
    if (ticked) cells.push(this.#hole({ kind: "tick", start: startOf(row), as: "cell" }));
    for (let column = 0; column < count; column++) {
      const cell = row.children[column];
      const words = cell ? state.all(cell).flatMap(cellWords) : [];
      const children = [...words, ...this.#below.splice(0)];
      const made = element(isHead && children.length > 0 ? "th" : "td", children);
      if (made.tagName === "th") made.properties.scope = "col";
      const side = align?.[column];
      if (side) made.properties.className = [side];
      cells.push(made);
    }
    const made = element("tr", cells);
    state.patch(row, made);
    return made;
  }

  #quote(state: State, node: Blockquote): Element {
    const [first, ...rest] = node.children;
    const opening = first?.type === "paragraph" ? readOpening(first, this.#source) : undefined;
    if (!opening) {
      const quote = defaultHandlers.blockquote(state, node) as Element;
      return quote;
    }
    const words: PhrasingContent[] = opening.rest;
    const body = words.length > 0 ? [{ ...(first as Paragraph), children: words }, ...rest] : rest;
    const blocks = body.flatMap((child) => blocksOf(state, child, node));
    if (!opening.signal) {
      const aside = element("blockquote", state.wrap(blocks, true));
      aside.properties.className = ["aside"];
      state.patch(node, aside);
      return aside;
    }
    const { signal, word, hazard } = opening;
    const head = this.#hole({ kind: "noteHead", start: startOf(node), signal, word, hazard });
    const note = element("div", [head, ...state.wrap(blocks, true)]);
    note.properties = { className: ["note", signal.toLowerCase()], role: "note" };
    note.data = { flow: "note" };
    state.patch(node, note);
    return note;
  }
}

function blocksOf(state: State, child: Nodes, parent: Parents): ElementContent[] {
  const made = state.one(child, parent);
  if (!made) return [];
  return Array.isArray(made) ? made : [made as ElementContent];
}

/** In a tight list the words stand in the item itself. */
function tight(blocks: readonly Element[], list: Parents | undefined): ElementContent[] {
  const loose = list?.type === "list" && (list.spread || list.children.some((one) => one.spread));
  if (loose) return [...blocks];
  return blocks.flatMap((one) => (one.tagName === "p" ? one.children : [one]));
}

function figureOf(pictures: readonly ElementContent[]): Element {
  const captions = pictures.flatMap((picture) => {
    const title = picture.type === "element" ? picture.properties.title : undefined;
    return typeof title === "string" ? [element("figcaption", [plain(title)])] : [];
  });
  for (const picture of pictures) {
    if (picture.type === "element" && captions.length > 0) delete picture.properties.title;
  }
  // A figure has one caption.
  return element("figure", [...pictures, ...captions.slice(0, 1)]);
}

/**
 * Words of a cell, each amount in an element of its own: where a cell is so narrow that words are
 * broken, an amount is better broken before its unit.
 */
function cellWords(node: ElementContent): ElementContent[] {
  if (node.type !== "text") return [node];
  return node.value.split(/((?<![\d.,])\d[\d.,]*\u00a0\S+)/u).map((text, index) => {
    if (index % 2 === 0) return plain(text);
    const kept = element("span", [plain(text.replaceAll("\u00a0", " "))]);
    kept.properties.className = ["kept"];
    return kept;
  });
}

function element(tagName: string, children: readonly ElementContent[]): Element {
  return { type: "element", tagName, properties: {}, children: [...children] };
}

function plain(value: string): Text {
  return { type: "text", value };
}
