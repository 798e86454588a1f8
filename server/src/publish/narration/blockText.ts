/** What a reader sees of a block of text: marks as their items, figures as their values, no signs. */
import type { GuideState } from "../../model/guideState.ts";
import type { PieceNode } from "../../model/pieceNode.ts";
import type { Figure, PartMark } from "../../syntax/dialect.ts";
import type { TextFact, TextRun } from "../../syntax/facts.ts";
import { MappedText } from "../../syntax/marks/mappedText.ts";
import { shownFigure } from "../figures.ts";
import { shownMark } from "../fill/marks.ts";
import { touchesAnother } from "../standsAlone.ts";
import type { PageWords } from "../words/form.ts";

export interface ReadBlock {
  readonly text: string;
  /** Tools and supplies whose marks stand behind a sentence: the text does not say them. */
  readonly things: readonly string[];
}

/** Reads the blocks of one piece. */
export class BlockReader {
  readonly #piece: PieceNode;
  readonly #guide: GuideState;
  readonly #words: PageWords;
  readonly #marks = new Map<number, PartMark>();
  readonly #figures = new Map<number, Figure>();

  constructor(piece: PieceNode, guide: GuideState, words: PageWords) {
    this.#piece = piece;
    this.#guide = guide;
    this.#words = words;
    for (const fact of piece.facts.facts) {
      if (fact.kind === "mark") this.#marks.set(fact.mark.span.start, fact.mark);
      else if (fact.kind === "figure") this.#figures.set(fact.figure.span.start, fact.figure);
    }
  }

  read(block: TextFact): ReadBlock {
    const things: string[] = [];
    let text = "";
    let end = block.span.start;
    for (const run of block.runs) {
      const { start } = run.span;
      const isOurs = run.kind === "mark" || run.kind === "figure";
      // Between runs stand Markdown's signs, which part words only with the white space among them.
      const isParted = /\s/.test(this.#source(end, start));
      if (isParted || (isOurs && touchesAnother(this.#source(start - 1, start), 1))) text += " ";
      text += this.#run(run, standsAlone(text), things);
      end = run.span.end;
    }
    const tidy = text.replace(/\s+/g, " ").replace(/ (?=[,.;:!?](?:\s|$))/g, "");
    return { text: tidy.replace(/([.!?])\./g, "$1").trim(), things };
  }

  #run({ kind, span }: TextRun, alone: boolean, things: string[]): string {
    const source = this.#source(span.start, span.end);
    switch (kind) {
      case "text":
      case "address":
        return decoded(source.replace(/[\r\n][ \t>]*/g, " "));
      case "code":
        return source.replace(/^`+|`+$/g, "");
      case "picture":
        return "";
      case "figure":
        return shownFigure(this.#figures.get(span.start)!, this.#piece, this.#guide).text;
      case "mark":
        return this.#mark(this.#marks.get(span.start)!, alone, things);
    }
  }

  /** A mark that stands alone behind a sentence is one of its own. */
  #mark(mark: PartMark, alone: boolean, things: string[]): string {
    const shown = shownMark(mark, this.#piece, this.#guide, this.#words);
    switch (shown.kind) {
      case "nothing":
        return "";
      case "thing":
        if (alone) things.push(shown.text);
        return alone ? "" : shown.text;
      case "text":
      case "see":
        return shown.text;
      case "items": {
        const stated = shown.stated ? ` = ${shown.stated}` : "";
        return shown.items.join(", ") + stated + (alone ? "." : "");
      }
    }
  }

  #source(start: number, end: number): string {
    const { page, start: offset } = this.#piece;
    return page.text.slice(offset + start, offset + end);
  }
}

/** Whether what comes next begins a sentence behind another. */
function standsAlone(before: string): boolean {
  return /[.!?]["”)]?\s*$/.test(before);
}

/** Without escapes and entities. */
function decoded(source: string): string {
  return MappedText.decode([{ raw: source, offset: 0, ending: "" }]).text;
}
