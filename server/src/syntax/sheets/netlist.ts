/**
 * The components of an XML netlist, as layout programs export it: elements `comp` with a designator
 * in `ref`, and in them what is known of the part, as elements with text (`value`, `footprint`), as
 * fields with a name and text, or as properties with a name and a value. Nets and symbols of the
 * library are passed over.
 */
import { LineIndex } from "../../text/lines.ts";
import type { Span } from "../../text/span.ts";
import type { TableCell, TableRow } from "../tableRow.ts";
import { Refused } from "./refused.ts";
import { SHEET_LIMITS } from "./sheet.ts";
import { type Attributes, localName, readXml, type XmlHandler } from "./xml.ts";

export interface Netlist {
  /** The header first: names of what the components tell. Empty when there are no components. */
  readonly rows: readonly TableRow[];
  /** Components or cells beyond the limits were left out. */
  readonly isCut: boolean;
}

/** Never throws; a text that is not well-formed gives the reason, and where it is. */
export function readNetlist(text: string): Netlist | { problem: string; at: number } {
  const reader = new NetlistReader(text);
  try {
    readXml([text], reader, MALFORMED);
  } catch (error) {
    if (error instanceof Refused) return { problem: error.message, at: error.at ?? 0 };
    throw error;
  }
  return { rows: reader.rows(), isCut: reader.isCut };
}

const MALFORMED =
  "Here this XML file is cut off or not well-formed, so nothing in it is read. Let the layout program export it again.";

const COMPONENTS = /^comp(?:onent)?$/i;
const DESIGNATORS = /^(?:ref|refdes|reference|designator)$/i;
/** Properties without a value that keep a part out of the kit. */
const LEFT_OUT = /^(?:dnp|exclude[_ ]from[_ ](?:bom|board))$/i;
const LEFT_OUT_COLUMN = "DNP";
/** Names of columns; what a program adds beyond them no list needs. */
const MAX_COLUMNS = 60;
const MAX_TEXT = 32_767;
/** Where texts are written out that the file has no place for. */
const NOWHERE: Span = { start: 0, end: 0 };

/** A value between the tags or quotation marks of the source. */
type Cell = TableCell;

interface Attribute {
  readonly name: string;
  readonly value: string;
  /** Behind the closing quotation mark. */
  readonly position: number;
}

/** An element within a component. */
interface Inner {
  readonly name: string;
  /** Behind the tag. */
  readonly start: number;
  /** What a field is called. */
  readonly called: string | undefined;
  hasElements: boolean;
}

class NetlistReader implements XmlHandler {
  readonly #source: string;
  readonly #columns = new Map<string, number>();
  readonly #names: string[] = [];
  readonly #components: ComponentRow[] = [];
  #cells = 0;
  isCut = false;
  /** Attributes of the tag in hand, with their ends. */
  #attributes: Attribute[] = [];
  #component: { cells: (Cell | undefined)[]; from: number; inner: Inner[] } | undefined;
  #text = "";

  constructor(source: string) {
    this.#source = source;
  }

  rows(): TableRow[] {
    if (this.#components.length === 0) return [];
    const header = this.#names.map((text) => ({ text, span: NOWHERE }));
    const lines = new LineIndex(this.#source);
    for (const row of this.#components) row.finish(lines, this.#names.length);
    return [new ComponentRow(header, NOWHERE, header.length), ...this.#components];
  }

  attribute(name: string, value: string, position: number): void {
    this.#attributes.push({ name, value, position });
  }

  open(name: string, attributes: Attributes, position: number): void {
    const taken = this.#attributes;
    this.#attributes = [];
    const component = this.#component;
    if (component) {
      const parent = component.inner.at(-1);
      if (parent) parent.hasElements = true;
      component.inner.push({
        name,
        start: position,
        called: attributes.name,
        hasElements: false,
      });
      this.#text = "";
      this.#described(name, attributes, taken);
    } else if (COMPONENTS.test(name) && taken.some((one) => DESIGNATORS.test(one.name))) {
      const from = this.#source.lastIndexOf("<", position - 1);
      this.#component = { cells: [], from, inner: [] };
      for (const one of taken) this.#add(localName(one.name), this.#quoted(one));
    }
  }

  text(part: string): void {
    if (this.#component && this.#text.length < MAX_TEXT) this.#text += part;
  }

  close(_name: string, position: number): void {
    const component = this.#component;
    if (!component) return;
    const inner = component.inner.pop();
    if (!inner) {
      this.#end(component, position);
      return;
    }
    const text = this.#text.trim().slice(0, MAX_TEXT);
    this.#text = "";
    if (inner.hasElements || text === "") return;
    const end = this.#source.lastIndexOf("</", position - 1);
    this.#add(inner.called ?? inner.name, cellOf(this.#source, text, inner.start, end));
  }

  /** What the attributes of an element within a component say. */
  #described(name: string, attributes: Attributes, taken: readonly Attribute[]): void {
    const called = attributes.name;
    const valued = taken.find((one) => one.name === "value");
    if (called === undefined) {
      const description = taken.find((one) => one.name === "description");
      if (description?.value) this.#add("description", this.#quoted(description));
    } else if (valued) {
      this.#add(called, this.#quoted(valued));
    } else if (name === "property" && LEFT_OUT.test(called)) {
      const { span } = this.#quoted(taken.find((one) => one.name === "name")!);
      this.#add(LEFT_OUT_COLUMN, { text: "DNP", span });
    }
  }

  #quoted({ value, position }: Attribute): Cell {
    const end = position - 1;
    const quote = this.#source[end]!;
    const start = this.#source.lastIndexOf(quote, end - 1) + 1;
    return cellOf(this.#source, value.trim().slice(0, MAX_TEXT), start, end);
  }

  /** The first of equal names counts. */
  #add(name: string, cell: Cell): void {
    const column = this.#columnOf(name);
    const cells = this.#component!.cells;
    if (column === undefined || cells[column]?.text) return;
    cells[column] = cell;
    this.#cells++;
  }

  #columnOf(name: string): number | undefined {
    const key = name.trim().toLowerCase();
    const known = this.#columns.get(key);
    if (known !== undefined || this.#names.length >= MAX_COLUMNS) return known;
    this.#columns.set(key, this.#names.length);
    return this.#names.push(name.trim()) - 1;
  }

  #end({ cells, from }: { cells: (Cell | undefined)[]; from: number }, position: number): void {
    this.#component = undefined;
    this.isCut ||= this.#components.length >= SHEET_LIMITS.rows || this.#cells > SHEET_LIMITS.cells;
    if (this.isCut) return;
    this.#components.push(new ComponentRow(cells, { start: from, end: position }, cells.length));
  }
}

function cellOf(source: string, text: string, from: number, to: number): Cell {
  const raw = source.slice(from, to);
  const start = from + raw.length - raw.trimStart().length;
  return { text, span: { start, end: start + raw.trim().length } };
}

class ComponentRow implements TableRow {
  line = 1;
  readonly span: Span;
  width: number;
  readonly #cells: readonly (Cell | undefined)[];

  constructor(cells: readonly (Cell | undefined)[], span: Span, width: number) {
    this.#cells = cells;
    this.span = span;
    this.width = width;
  }

  /** All components are as wide as the header. */
  finish(lines: LineIndex, width: number): void {
    this.line = lines.positionAt(this.span.start).line + 1;
    this.width = width;
  }

  text(column: number): string {
    return this.#cells[column]?.text ?? "";
  }

  cell(column: number): TableCell | undefined {
    if (column >= this.width) return undefined;
    return this.#cells[column] ?? { text: "", span: { start: this.span.end, end: this.span.end } };
  }

  /** Where characters are written as entities, the whole value. */
  place(column: number, start: number, end: number): Span {
    const { text, span } = this.cell(column) ?? { text: "", span: this.span };
    if (span.end - span.start !== text.length) return span;
    return { start: span.start + start, end: span.start + end };
  }
}
