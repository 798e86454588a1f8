/** The tables of a piece, cell by cell, as its facts tell them. */
import type { Span } from "../text/span.ts";
import type { GuidePiece, ResolvedMark } from "./guide.ts";
import { HELD, type TextBlock } from "./prose.ts";

export interface TableCell {
  /** What a reader sees in the cell, else the whole cell. Counts in the piece. */
  readonly span: Span;
  /** Trimmed; marks, figures and the like are `HELD` characters. */
  readonly text: string;
  readonly block: TextBlock;
  readonly marks: readonly ResolvedMark[];
}

export interface GuideTable {
  readonly header: readonly TableCell[];
  readonly rows: readonly (readonly TableCell[])[];
}

/** The tables of the piece in document order. */
export function readTables(piece: GuidePiece): readonly GuideTable[] {
  const facts = piece.facts.facts.filter((fact) => fact.kind === "row");
  if (facts.length === 0) return [];
  const reader = new CellReader(piece);
  const tables: { header: readonly TableCell[]; rows: (readonly TableCell[])[] }[] = [];
  for (const fact of facts) {
    const cells = fact.cells.map((span) => reader.next(span));
    if (fact.header) tables.push({ header: cells, rows: [] });
    else tables.at(-1)?.rows.push(cells);
  }
  return tables;
}

/** Blocks and marks come in the order of the cells, so that a long table is read in one go. */
class CellReader {
  readonly #blocks: readonly TextBlock[];
  readonly #marks: readonly ResolvedMark[];
  #block = 0;
  #mark = 0;

  constructor(piece: GuidePiece) {
    this.#blocks = piece.prose.filter(({ fact }) => fact.block === "cell");
    this.#marks = piece.marks;
  }

  next(cell: Span): TableCell {
    const block = this.#blocks[this.#block++]!;
    const marks: ResolvedMark[] = [];
    for (; this.#mark < this.#marks.length; this.#mark++) {
      const { mark } = this.#marks[this.#mark]!;
      if (mark.span.start >= cell.end) break;
      if (mark.span.start >= cell.start) marks.push(this.#marks[this.#mark]!);
    }
    const text = block.text.trim();
    const start = block.fact.span.start + block.text.indexOf(text);
    return { span: text === "" ? cell : { start, end: start + text.length }, text, block, marks };
  }
}

/** Whether the cell holds words alone: no mark, figure, code or picture. */
export function isPlain(cell: TableCell): boolean {
  return cell.text !== "" && !cell.text.includes(HELD);
}
