/**
 * The words of a piece: its blocks of text with words and sentences, each with its offsets. They are
 * read from the page when asked for and not kept with the piece.
 */
import type { NoteFact, TextFact } from "../syntax/facts.ts";
import type { Span } from "../text/span.ts";
import type { Word } from "../text/stems.ts";
import type { GuidePiece, Step } from "./guide.ts";
import { readSentences } from "./sentences.ts";
import { readWords } from "./wordReader.ts";

/** Stands in a block's text for each sign of a mark, a figure, code, a picture or an address. */
export const HELD = "\uFFFC";

/** A sentence of a block; offsets count in the piece. */
export interface Sentence extends Span {
  readonly words: readonly Word[];
}

/** A block of text. Offsets of words and sentences count in the piece. */
export class TextBlock {
  readonly piece: GuidePiece;
  readonly fact: TextFact;
  /** The step whose text it is; undefined before the first step below a heading. */
  readonly step: Step | undefined;
  /** The hazard note it stands in: what a note says is no instruction of the step. */
  readonly note: NoteFact | undefined;
  #text: string | undefined;
  #words: readonly Word[] | undefined;
  #sentences: readonly Sentence[] | undefined;

  constructor(
    piece: GuidePiece,
    fact: TextFact,
    step: Step | undefined,
    note: NoteFact | undefined,
  ) {
    this.piece = piece;
    this.fact = fact;
    this.step = step;
    this.note = note;
  }

  /** Whether it tells the builder what to do: a step's own text, no heading, no quote. */
  get instructs(): boolean {
    return this.step !== undefined && !this.fact.quoted && this.fact.block !== "heading";
  }

  /**
   * What a reader sees, as long as the block's source: `text[i]` stands at `fact.span.start + i` in
   * the piece. Markdown's signs are spaces, marks and the like are `HELD`; escapes stay as written.
   */
  get text(): string {
    this.#text ??= visible(this.piece, this.fact);
    return this.#text;
  }

  /** What a reader sees at a span of the piece that lies in the block. */
  at({ start, end }: Span): string {
    return this.text.slice(start - this.fact.span.start, end - this.fact.span.start);
  }

  get words(): readonly Word[] {
    this.#words ??= readWords(this.text, this.fact.span.start);
    return this.#words;
  }

  get sentences(): readonly Sentence[] {
    this.#sentences ??= readSentences(this.text, this.words, this.fact.span.start);
    return this.#sentences;
  }
}

/** The blocks of a piece in document order, and those of each of its steps. */
class Prose {
  readonly blocks: readonly TextBlock[];
  #bySteps: ReadonlyMap<Step, readonly TextBlock[]> | undefined;

  constructor(piece: GuidePiece) {
    this.blocks = readBlocks(piece);
  }

  ofStep(step: Step): readonly TextBlock[] {
    this.#bySteps ??= bySteps(this.blocks);
    return this.#bySteps.get(step) ?? [];
  }
}

function bySteps(blocks: readonly TextBlock[]): ReadonlyMap<Step, readonly TextBlock[]> {
  const found = new Map<Step, TextBlock[]>();
  for (const block of blocks) {
    if (!block.step) continue;
    const own = found.get(block.step);
    if (own) own.push(block);
    else found.set(block.step, [block]);
  }
  return found;
}

function readBlocks(piece: GuidePiece): readonly TextBlock[] {
  const blocks: TextBlock[] = [];
  let step: Step | undefined;
  let next = 0;
  let note: NoteFact | undefined;
  for (const fact of piece.facts.facts) {
    if (fact.kind === "heading") step = undefined;
    else if (fact.kind === "step" && piece.steps[next]?.fact === fact) step = piece.steps[next++];
    else if (fact.kind === "note") note = fact;
    else if (fact.kind === "text") {
      const within = note && fact.span.start < note.span.end ? note : undefined;
      blocks.push(new TextBlock(piece, fact, step, within));
    }
  }
  return blocks;
}

/** The start of a line that a paragraph goes on in: indentation and the signs of quotes. */
const LINE_START = /[\r\n][ \t>]*/g;

function visible({ page, start }: GuidePiece, { span, runs }: TextFact): string {
  const source = page.text.slice(start + span.start, start + span.end);
  let text = "";
  for (const run of runs) {
    const from = run.span.start - span.start;
    const to = run.span.end - span.start;
    text += " ".repeat(from - text.length);
    text += run.kind === "text" ? source.slice(from, to) : HELD.repeat(to - from);
  }
  text += " ".repeat(source.length - text.length);
  return text.includes("\n") || text.includes("\r")
    ? text.replace(LINE_START, (sign) => " ".repeat(sign.length))
    : text;
}

/** Keeps the prose of the pieces last asked for, so that each check need not read it anew. */
export class ProseShelf {
  /** Characters of text kept: those of a long stage. A step of a hundred takes some 3 kB. */
  static readonly room = 100_000;
  readonly #kept = new Map<GuidePiece, Prose>();
  #characters = 0;

  of(piece: GuidePiece): Prose {
    const known = this.#kept.get(piece);
    if (known) return known;
    const prose = new Prose(piece);
    this.#kept.set(piece, prose);
    this.#characters += piece.length;
    for (const oldest of this.#kept.keys()) {
      if (this.#characters <= ProseShelf.room || oldest === piece) break;
      this.#kept.delete(oldest);
      this.#characters -= oldest.length;
    }
    return prose;
  }
}
