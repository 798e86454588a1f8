/** The words of a paragraph or heading, read the quick way: text, marks, figures, pictures, and what is bold. */
import type { Node, PhrasingContent } from "mdast";
import type { SyntaxProblem } from "../dialect.ts";
import { parseFigure } from "../figures/parseFigure.ts";
import { MAX_FIGURE } from "../figures/words.ts";
import { labelKey } from "../labels.ts";
import { MappedText } from "../marks/mappedText.ts";
import { parseMark } from "../marks/parseMark.ts";
import { MAX_MARK } from "../marks/words.ts";
import { type Point, pointAt, type Stretch } from "./lines.ts";

/**
 * A picture with a plain description and a plain address, and no attributes behind it. Characters of
 * emphasis may stand in the address alone.
 */
const PICTURE = /!\[([^\n\r!*<[\]{}]{0,500})\]\(([\w./%-]+)\)(?!\{)/;
const PICTURE_HERE = new RegExp(PICTURE, "y");
const PICTURES = new RegExp(PICTURE, "g");

/**
 * Bold words on one line, with white space before and behind, so that their stars can only open and only
 * close.
 */
const BOLD = /(?<![^ \n])\*\*([^\s*[\]{}](?:[^*\r\n[\]{}]{0,200}[^\s*[\]{}])?)\*\*(?![^ \r\n])/;
const BOLD_HERE = new RegExp(BOLD, "y");
const BOLDS = new RegExp(BOLD, "g");

/** The text with words in the place of plain pictures and of what is bold, each between two letters. */
export function withoutSigns(text: string): string {
  const words = text.includes("![") ? text.replace(PICTURES, "x$1x") : text;
  return words.includes("**") ? words.replace(BOLDS, "x$1x") : words;
}

/** What may be more than text. */
const SIGN = /[[\]{]|\*\*/g;
const BRACKET = /[[\]]/g;
/** What no bracket or brace may hold to be read the quick way. */
const NESTED = /[[\]{]/;

/**
 * The words on `lines`, or undefined where it takes micromark to read them. `links` are the labels
 * by which a bracket becomes a link.
 */
export function readWords(
  text: string,
  lines: readonly Stretch[],
  links: ReadonlySet<string>,
): PhrasingContent[] | undefined {
  const reader = new WordReader(text, links);
  for (const line of lines) if (!reader.take(line)) return undefined;
  return reader.finish();
}

class WordReader {
  readonly #text: string;
  readonly #links: ReadonlySet<string>;
  readonly #words: PhrasingContent[] = [];
  #stretch!: Stretch;
  /** Text up to here, on the line in hand, is in `#words` or in `#value`. */
  #done = 0;
  /** Text of the lines before that is in no node yet, and where it begins. */
  #value = "";
  #start: Point | undefined;

  constructor(text: string, links: ReadonlySet<string>) {
    this.#text = text;
    this.#links = links;
  }

  /** Reads the next line; false where it cannot be read the quick way. */
  take(stretch: Stretch): boolean {
    if (this.#stretch) this.#goOn(stretch);
    this.#stretch = stretch;
    this.#done = stretch.from;
    let at = stretch.from;
    for (;;) {
      SIGN.lastIndex = at;
      const sign = SIGN.exec(this.#text);
      if (!sign || sign.index >= stretch.to) return true;
      const end = this.#read(sign[0], sign.index);
      if (!end) return false;
      at = end;
    }
  }

  /** Reads what the sign opens. Gives where to go on. */
  #read(sign: string, at: number): number | undefined {
    if (sign === "[") return this.#bracket(at);
    if (sign === "{") return this.#brace(at);
    return sign === "**" ? this.#bold(at) : undefined;
  }

  finish(): PhrasingContent[] {
    this.#endText(this.#stretch.to);
    return this.#words;
  }

  /** Takes the rest of the line in hand and its end into the text that goes on in the next. */
  #goOn(next: Stretch): void {
    const { line, to } = this.#stretch;
    this.#start ??= pointAt(line, this.#done);
    this.#value += this.#text.slice(this.#done, to) + this.#text.slice(to, next.line.start);
  }

  /** Reads the bracket that opens at `open`. Gives where to go on. */
  #bracket(open: number): number | undefined {
    if (open > this.#done && this.#text[open - 1] === "!") return this.#picture(open - 1);
    const inside = this.#inside(open, "]", MAX_MARK);
    if (inside === undefined) return this.#isLeftOpen(open) ? open + 1 : undefined;
    if (this.#links.size > 0 && this.#links.has(labelKey(inside))) return undefined;
    const close = open + inside.length + 1;
    const result = parseMark(new MappedText(inside, open + 1));
    if (!result) return close + 1;
    if ("almost" in result) return this.#almost(close, result.almost);
    const position = this.#place(open, close + 1);
    const node = { type: "partMark", mark: result.mark, value: `[${inside}]`, position } as const;
    return this.#add(node, open, close + 1);
  }

  /** Reads the bold words whose first star is at `start`. Gives where to go on. */
  #bold(start: number): number | undefined {
    BOLD_HERE.lastIndex = start;
    const match = BOLD_HERE.exec(this.#text);
    if (!match) return undefined;
    const [{ length }, value] = match;
    const end = start + length;
    const text = {
      type: "text",
      value: value!,
      position: this.#place(start + 2, end - 2),
    } as const;
    const position = this.#place(start, end);
    return this.#add({ type: "strong", children: [text], position }, start, end);
  }

  /** Reads the picture whose `!` is at `start`. Gives where to go on. */
  #picture(start: number): number | undefined {
    PICTURE_HERE.lastIndex = start;
    const match = PICTURE_HERE.exec(this.#text);
    if (!match) return undefined;
    const [{ length }, alt, url] = match;
    const end = start + length;
    const position = this.#place(start, end);
    return this.#add({ type: "image", title: null, url: url!, alt: alt!, position }, start, end);
  }

  /** Reads the brace that opens at `open`. Gives where to go on. */
  #brace(open: number): number | undefined {
    const inside = this.#inside(open, "}", MAX_FIGURE);
    if (inside === undefined || (/[<>]/.test(inside) && !/^\s*read\s/.test(inside)))
      return undefined;
    const close = open + inside.length + 1;
    const result = parseFigure(new MappedText(inside, open + 1));
    if (!result) return open + 1;
    if ("almost" in result) return this.#almost(open, result.almost);
    const position = this.#place(open, close + 1);
    const node = { type: "figure", figure: result.figure, value: `{${inside}}`, position } as const;
    return this.#add(node, open, close + 1);
  }

  /**
   * Whether no bracket closes the one at `open` before another opens: it is text then, since a closing
   * one that is left over, here or on a later line, is not read the quick way.
   */
  #isLeftOpen(open: number): boolean {
    BRACKET.lastIndex = open + 1;
    const next = BRACKET.exec(this.#text);
    return !next || next.index >= this.#stretch.to || next[0] === "[";
  }

  /** What stands between the sign at `open` and the next `close` on its line. */
  #inside(open: number, close: string, most: number): string | undefined {
    const end = this.#text.indexOf(close, open);
    if (end < 0 || end >= this.#stretch.to || end - open > most) return undefined;
    const inside = this.#text.slice(open + 1, end);
    return NESTED.test(inside) || inside.includes("**") ? undefined : inside;
  }

  /** The sign of a near miss. */
  #almost(at: number, problem: SyntaxProblem): number {
    const value = this.#text[at]!;
    const node = { type: "almostMark", problem, value, position: this.#place(at, at + 1) } as const;
    return this.#add(node, at, at + 1);
  }

  #add(node: PhrasingContent, start: number, end: number): number {
    this.#endText(start);
    this.#words.push(node);
    this.#done = end;
    return end;
  }

  /** Makes a node of the text up to `end`. */
  #endText(end: number): void {
    const value = this.#value + this.#text.slice(this.#done, end);
    if (value === "") return;
    const { line } = this.#stretch;
    const start = this.#start ?? pointAt(line, this.#done);
    this.#words.push({ type: "text", value, position: { start, end: pointAt(line, end) } });
    this.#value = "";
    this.#start = undefined;
  }

  #place(start: number, end: number): NonNullable<Node["position"]> {
    const { line } = this.#stretch;
    return { start: pointAt(line, start), end: pointAt(line, end) };
  }
}
