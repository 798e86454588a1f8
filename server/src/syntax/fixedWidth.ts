/**
 * Text whose columns are made of blanks: where they part, if that is certain. Places in a line count
 * in UTF-16 units from its start.
 */
import type { Span } from "../text/span.ts";
import type { TableCell, TableRow } from "./tableRow.ts";

/** A line that holds more than blanks. */
export interface TextLine {
  /** One-based. */
  readonly number: number;
  readonly text: string;
  /** Where it starts in the whole text. */
  readonly start: number;
}

/** A word or a few of them: from where to where in its line. */
export interface Piece extends Span {
  readonly text: string;
}

export function textLines(text: string): TextLine[] {
  const lines: TextLine[] = [];
  let number = 0;
  for (const { 0: line, index } of text.matchAll(/[^\r\n]*(?:\r\n?|\n|$)/g)) {
    number++;
    const content = line.trimEnd();
    if (content.trim() !== "") lines.push({ number, text: content, start: index });
  }
  return lines;
}

/** What stands between stretches of so many blanks. */
export function piecesOf(line: string, blanks: 1 | 2): Piece[] {
  const pieces: Piece[] = [];
  const pattern = blanks === 1 ? /\S+/g : /\S+(?: \S+)*/g;
  for (const { 0: text, index } of line.matchAll(pattern)) {
    pieces.push({ text, start: index, end: index + text.length });
  }
  return pieces;
}

/** A line of signs that rules off: `-----`, `=== ====`, `+---+---+`. */
export function isRule(line: string): boolean {
  return /^[\s=_+|-]*$/.test(line) && /([=_-])\1\1/.test(line);
}

/** The blanks between two columns, as all lines so far leave them. */
interface Gap {
  readonly from: number;
  /** Where the name of the next column begins and ends. */
  readonly to: number;
  readonly end: number;
  /** The names are parted by a single blank, so they may be one. */
  readonly isNarrow: boolean;
  /** For each place of the gap, whether all lines are blank there. */
  readonly blank: boolean[];
  /** All cells below the next name end where it ends. */
  isFlushRight: boolean;
  /** Of a narrow gap: every line is blank in it, and its next cell begins below the name. */
  isOpen: boolean;
}

/** Learns from each line of a block where its columns part. */
export class Gutters {
  readonly #gaps: readonly Gap[];

  /** `names`: what heads the columns; parted by a single blank they may be one, unless ruled. */
  constructor(names: readonly Span[], isRuled = false) {
    this.#gaps = names.slice(1).map(({ start: to, end }, i) => {
      const from = names[i]!.end;
      const isNarrow = to - from === 1 && !isRuled;
      const blank = new Array<boolean>(to - from).fill(true);
      return { from, to, end, isNarrow, blank, isFlushRight: true, isOpen: true };
    });
  }

  /**
   * Whether the line keeps to the columns: its cells begin at or behind the names, or end with them.
   * If it does not, nothing is learnt from it.
   */
  take(line: string): boolean {
    if (!this.#gaps.every((gap) => gap.isNarrow || fits(line, gap))) return false;
    for (const [i, gap] of this.#gaps.entries()) {
      if (gap.isNarrow) gap.isOpen &&= opensBelow(line, gap, this.#gaps[i + 1]?.from);
      else narrow(line, gap);
    }
    return true;
  }

  /** Where the columns part. */
  cuts(): number[] {
    return this.#gaps
      .filter(({ isNarrow, isOpen }) => isOpen || !isNarrow)
      .map(({ from, blank }) => from + blank.lastIndexOf(true));
  }
}

function fits(line: string, { blank, from, to, end, isFlushRight }: Gap): boolean {
  if (blank.at(-1) && isBlank(line, to - 1)) return true;
  return (
    isFlushRight &&
    endsBelow(line, from, end) &&
    blank.some((is, i) => is && isBlank(line, from + i))
  );
}

function narrow(line: string, gap: Gap): void {
  const { blank, from, end } = gap;
  for (let i = 0; i < blank.length; i++) blank[i] &&= isBlank(line, from + i);
  gap.isFlushRight &&= endsBelow(line, from, end);
}

function endsBelow(line: string, from: number, end: number): boolean {
  if (!isBlank(line, end)) return false;
  return !isBlank(line, end - 1) || line.slice(from, end).trim() === "";
}

function opensBelow(line: string, { from, to }: Gap, end = line.length): boolean {
  return isBlank(line, from) && (!isBlank(line, to) || line.slice(to, end).trim() === "");
}

/** Behind its end a line is blank. */
export function isBlank(line: string, at: number): boolean {
  return at >= line.length || line[at] === " ";
}

/** A line cut into cells. */
export class FixedRow implements TableRow {
  readonly line: number;
  readonly span: Span;
  readonly width: number;
  readonly #cells: readonly TableCell[];

  constructor({ number, text, start }: TextLine, cuts: readonly number[]) {
    this.line = number;
    this.span = { start, end: start + text.length };
    this.width = cuts.length + 1;
    this.#cells = [0, ...cuts].map((from, i) => cellOf(text, start, from, cuts[i] ?? text.length));
  }

  /** Whether a cell has a gap in its midst, as if it were two. */
  get isTorn(): boolean {
    return this.#cells.some(({ text }) => text.includes("  "));
  }

  text(column: number): string {
    return this.#cells[column]?.text ?? "";
  }

  cell(column: number): TableCell | undefined {
    return this.#cells[column];
  }

  place(column: number, start: number, end: number): Span {
    const at = this.#cells[column]?.span.start ?? this.span.end;
    return { start: at + start, end: at + end };
  }
}

function cellOf(line: string, lineStart: number, from: number, to: number): TableCell {
  const raw = line.slice(from, to);
  const text = raw.trim();
  const start = lineStart + Math.min(from, line.length) + (text === "" ? 0 : raw.indexOf(text));
  return { text, span: { start, end: start + text.length } };
}
