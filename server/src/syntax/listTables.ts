/** The tables of a Markdown file, as a parts list: cells as a reader sees them, at their places. */
import type { TableCell as MarkdownCell, Nodes, Parents, Table } from "mdast";
import { fromMarkdown } from "mdast-util-from-markdown";
import { gfmFromMarkdown } from "mdast-util-gfm";
import { gfm } from "micromark-extension-gfm";
import type { Span } from "../text/span.ts";
import { MappedText } from "./marks/mappedText.ts";
import { spanOf } from "./nodes.ts";
import type { TableCell, TableRow } from "./tableRow.ts";

/** Single tildes stay as they are: between designators they are range signs. */
const GFM = gfm({ singleTilde: false });
/** Without the transform that finds autolinks in finished text: its nodes have no positions. */
const TREE = gfmFromMarkdown().map(({ transforms: _, ...extension }) => extension);

/** The rows of each GFM table of the text, header first, with or without outer pipes. */
export function readMarkdownTables(text: string): TableRow[][] {
  // micromark drops a leading byte-order mark without counting it; an extra one keeps offsets exact.
  const source = text.startsWith("\uFEFF") ? `\uFEFF${text}` : text;
  const tree = fromMarkdown(source, { extensions: [GFM], mdastExtensions: TREE });
  const tables: TableRow[][] = [];
  collect(tree, text, tables);
  return tables;
}

function collect(parent: Parents, text: string, tables: TableRow[][]): void {
  for (const child of parent.children) {
    if (child.type === "table") tables.push(rowsOf(child, text));
    else if ("children" in child) collect(child, text, tables);
  }
}

function rowsOf(table: Table, text: string): TableRow[] {
  return table.children.map((row) => {
    const cells = row.children.map((cell) => readCell(cell, text));
    return new MarkdownRow(row.position!.start.line, spanOf(row), cells);
  });
}

interface PlacedCell extends TableCell {
  /** Source offset of each character and of the end; absent where the text stands as it is. */
  readonly offsets?: readonly number[];
}

class MarkdownRow implements TableRow {
  readonly line: number;
  readonly span: Span;
  readonly #cells: readonly PlacedCell[];

  constructor(line: number, span: Span, cells: readonly PlacedCell[]) {
    this.line = line;
    this.span = span;
    this.#cells = cells;
  }

  get width(): number {
    return this.#cells.length;
  }

  text(column: number): string {
    return this.#cells[column]?.text ?? "";
  }

  cell(column: number): TableCell | undefined {
    return this.#cells[column];
  }

  place(column: number, start: number, end: number): Span {
    const cell = this.#cells[column];
    if (!cell) return { start: this.span.end, end: this.span.end };
    const { offsets, span } = cell;
    if (!offsets) return { start: span.start + start, end: span.start + end };
    const last = end > start ? offsets[end - 1]! + 1 : offsets[start]!;
    return { start: offsets[start]!, end: Math.max(last, offsets[start]!) };
  }
}

function readCell(cell: MarkdownCell, source: string): PlacedCell {
  const [first, last] = [cell.children[0], cell.children.at(-1)];
  if (!first || !last) return { text: "", span: withoutPipes(spanOf(cell), source) };
  const span = { start: spanOf(first).start, end: spanOf(last).end };
  if (cell.children.length === 1 && first.type === "text") {
    const raw = source.slice(span.start, span.end);
    if (raw === first.value) return { text: raw, span };
  }
  const shown = new ShownText(source);
  shown.addAll(cell);
  return { ...shown.trimmed(), span };
}

/** The text that a cell shows, each character with its place. */
class ShownText {
  readonly #source: string;
  #text = "";
  readonly #offsets: number[] = [];

  constructor(source: string) {
    this.#source = source;
  }

  addAll(parent: Parents): void {
    for (const child of parent.children) this.#add(child);
  }

  trimmed(): { text: string; offsets: readonly number[] } {
    const start = this.#text.length - this.#text.trimStart().length;
    const text = this.#text.trim();
    const offsets = this.#offsets.slice(start, start + text.length);
    return { text, offsets: [...offsets, (offsets.at(-1) ?? 0) + 1] };
  }

  #add(node: Nodes): void {
    if (node.type === "text") this.#addText(spanOf(node));
    else if (node.type === "inlineCode") this.#addCode(node.value, spanOf(node));
    else if (node.type === "html") this.#addHtml(node.value, spanOf(node));
    else if ("alt" in node) this.#addAt(node.alt ?? "", spanOf(node).start);
    else if ("children" in node) this.addAll(node);
  }

  #addText({ start, end }: Span): void {
    const raw = this.#source.slice(start, end);
    const decoded = MappedText.decode([{ raw, offset: start, ending: "" }]);
    for (let i = 0; i < decoded.text.length; i++) this.#offsets.push(decoded.offsetAt(i));
    this.#text += decoded.text;
  }

  #addCode(value: string, { start, end }: Span): void {
    const at = this.#source.slice(start, end).indexOf(value);
    if (at < 0) {
      this.#addAt(value, start);
      return;
    }
    for (let i = 0; i < value.length; i++) this.#offsets.push(start + at + i);
    this.#text += value;
  }

  /** A line break parts the items of a list. */
  #addHtml(value: string, { start }: Span): void {
    if (/^<br\s*\/?>$/i.test(value)) this.#addAt("\n", start);
  }

  /** Text that does not stand in the source as such. */
  #addAt(text: string, offset: number): void {
    for (let i = 0; i < text.length; i++) this.#offsets.push(offset);
    this.#text += text;
  }
}

function withoutPipes({ start, end }: Span, source: string): Span {
  const from = source[start] === "|" ? start + 1 : start;
  const to = end > from && source[end - 1] === "|" ? end - 1 : end;
  return { start: from, end: to };
}
