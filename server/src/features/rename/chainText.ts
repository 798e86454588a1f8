/**
 * Renames a part among designators that are written one after the other, in a part mark or in a cell
 * of a parts list. Those that were short because of the one before (`C1, 3`) are written in full
 * where they would no longer be read as before.
 */
import { readDesignator } from "../../syntax/designators.ts";
import type { Span, TextEdit } from "../../text/span.ts";
import type { TextSource } from "../../text/textSource.ts";
import { type NewName, renamed } from "./edit.ts";
import { boardOf, numberOf, type RangeText, rangeWithout, readRangeText } from "./rangeText.ts";

/** A designator, or a range of them. */
export interface Link {
  readonly span: Span;
  /** What it says: of a range all names, in full. */
  readonly names: readonly string[];
  readonly isRange: boolean;
  /** Board that is written before it, or carried on to it. */
  readonly board: string | undefined;
  /** Whether a neighbour may become part of its range. */
  readonly mayGrow: boolean;
  /** Whether one of its names means the renamed part. */
  isMeant(name: string): boolean;
}

export interface ChainStyle {
  /** Written between the pieces of a range that is split. */
  readonly separator: string;
  /** The sign of a range that is written in a way of its own (`R3toR5`). */
  readonly sign: string;
}

/** Edits of the text in which the links stand, in order. */
export function renameInChain(
  text: TextSource,
  links: readonly Link[],
  name: NewName,
  style: ChainStyle,
): readonly TextEdit[] {
  return new ChainRename(text, links, name, style).edits();
}

class ChainRename {
  readonly #text: TextSource;
  readonly #links: readonly Link[];
  readonly #name: NewName;
  readonly #style: ChainStyle;
  readonly #edits: TextEdit[] = [];
  /** Class letters that a short designator takes over where the reading has come to. */
  #carried: string | undefined;

  constructor(text: TextSource, links: readonly Link[], name: NewName, style: ChainStyle) {
    this.#text = text;
    this.#links = links;
    this.#name = name;
    this.#style = style;
  }

  edits(): readonly TextEdit[] {
    for (let index = 0; index < this.#links.length; index++) {
      const link = this.#links[index]!;
      if (link.isRange) this.#range(link);
      else if (link.isMeant(link.names[0]!)) index += this.#meant(link, index);
      else this.#other(link);
    }
    return this.#edits;
  }

  /** The renamed part by itself. Gives how many links behind it are dealt with too. */
  #meant(link: Link, index: number): number {
    const to = renamed(link.names[0]!, this.#name);
    this.#carried = lettersOf(to);
    const before = this.#links[index - 1];
    const behind = this.#links[index + 1];
    if (before && this.#takesIn(before, link, to, 1)) {
      const { last } = this.#textOf(before);
      const start = before.span.end - last.length;
      this.#edit({ start, end: link.span.end }, /^\d/.test(last) ? numberOf(to) : to);
      return 0;
    }
    const board = boardOf(this.#source(link.span));
    if (behind && this.#takesIn(behind, link, to, -1)) {
      const text = this.#textOf(behind);
      const end = behind.span.start + text.board.length + text.first.length;
      this.#edit({ start: link.span.start, end }, board + to);
      return 1;
    }
    this.#edit(link.span, board + to);
    return 0;
  }

  /** Whether the range ends right before the new name (`by` 1), or begins right behind it (-1). */
  #takesIn(range: Link, link: Link, to: string, by: 1 | -1): boolean {
    if (!range.isRange || !range.mayGrow || !link.mayGrow || range.board !== link.board) {
      return false;
    }
    if (range.names.some((name) => range.isMeant(name)) || !this.#readRange(range)) return false;
    const end = readDesignator(by === 1 ? range.names.at(-1)! : range.names[0]!);
    const own = readDesignator(to);
    if (!end || !own || end.suffix || own.suffix || end.letters !== own.letters) return false;
    const [first, second] = by === 1 ? [range, link] : [link, range];
    const between = this.#source({ start: first.span.end, end: second.span.start });
    return Number(end.digits) + by === Number(own.digits) && /^\s*,\s*$/.test(between);
  }

  #other({ span, names: [name] }: Link): void {
    const source = this.#source(span);
    const board = boardOf(source);
    if (this.#isMisread(source.slice(board.length), name!)) this.#edit(span, board + name!);
    this.#carried = lettersOf(name!);
  }

  #range(link: Link): void {
    const { names, span } = link;
    const text = this.#textOf(link);
    if (names.some((name) => link.isMeant(name))) {
      const pieces = rangeWithout(text, names, (name) => link.isMeant(name), this.#name);
      this.#edit(span, pieces.join(this.#style.separator));
      const last = names.at(-1)!;
      this.#carried = lettersOf(link.isMeant(last) ? this.#name.to : last);
      return;
    }
    if (this.#isMisread(text.first, names[0]!)) {
      this.#edit(span, text.board + names[0]! + text.sign + text.last);
    }
    this.#carried = lettersOf(names[0]!);
  }

  /** Whether a short designator no longer takes over its own letters. */
  #isMisread(written: string, name: string): boolean {
    const isShort = written.toUpperCase() !== name.toUpperCase();
    return isShort && this.#carried !== undefined && this.#carried !== lettersOf(name);
  }

  #textOf(link: Link): RangeText {
    const { names, span } = link;
    const known = this.#readRange(link);
    if (known) return known;
    const board = boardOf(this.#source(span));
    return { board, first: names[0]!, sign: this.#style.sign, last: names.at(-1)! };
  }

  #readRange({ span, names }: Link): RangeText | undefined {
    return readRangeText(this.#source(span), names[0]!);
  }

  #source({ start, end }: Span): string {
    return this.#text.slice(start, end);
  }

  #edit(span: Span, text: string): void {
    this.#edits.push({ span, text });
  }
}

function lettersOf(name: string): string | undefined {
  return readDesignator(name)?.letters;
}
