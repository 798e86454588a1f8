/**
 * Tells a part mark one of whose brackets is missing, or that is too long to be read. CommonMark shows
 * such a bracket as text, so the parts would be counted nowhere and nobody would learn why. Only what
 * begins (or ends) with a designator beyond doubt, or with a role word and its colon, counts as meant.
 */
import type { Span } from "../../text/span.ts";
import type { SyntaxProblem } from "../dialect.ts";
import { MappedText, type SourceLine } from "./mappedText.ts";
import { mendedMark } from "./mended.ts";
import { MAX_MARK, ROLES } from "./words.ts";

const DESIGNATOR = String.raw`\p{Lu}{1,5}\d{1,5}\p{L}?(?![\p{L}\d_])`;
/** A number or letter that takes the rest from the part before it; a measure (`3 mm`) is none. */
const CARRIED = String.raw`\d{1,5}\p{L}?(?=\s*(?:$|[,.;:+&)}=–—-]|\.\.|to\s|bis\s|à\s))(?![.,]\d)`;
const BOARD = String.raw`(?:[\p{L}\d][\p{L}\d._-]{0,30}\/)?`;
const SIGN = String.raw`\s*(?:,\s*(?:(?:and|und|et|y|en)\s+)?|[;&+–—−…~-]|\.{2,3})\s*`;
const WORD = String.raw`\s+(?:and|und|et|y|en|or|oder|ou|of|o|to|thru|through|bis|tot|t\/m|à|a)\s+`;
/** The end of a range, right behind its dash. */
const RANGE_END = String.raw`[–—−…~-]\d{1,5}\p{L}?(?![\p{L}\d_]|[.,]\d)`;
const MORE = `${RANGE_END}|${SIGN}${BOARD}(?:${DESIGNATOR}|${CARRIED})|${WORD}${BOARD}${DESIGNATOR}`;
const LIST = `${BOARD}${DESIGNATOR}(?:${MORE})*`;
/** A count of hardware whose name says a size: `6 × M3x10`, `4 × washer M3`. */
const AMOUNT = String.raw`\d{1,4}\s*[×x]\s*(?:\p{L}+\s+)?\p{Lu}\p{L}*\d[\p{L}\d.×-]*(?<![.-])`;
const SET = String.raw`(?:all|rest of)\s+\p{Lu}{1,5}(?!\p{L})(?:\s+except\s+${LIST})?`;
const VALUE = String.raw`(?:\s*=\s*\d[\p{L}\d.,%Ωµ°±/]*(?<![.,])(?:\s[%ΩµnpukMm]?[FHΩVAW%](?!\p{L}))?)?`;
const ROLE = String.raw`(?:(?:${[...ROLES.keys()].map(anyCase).join("|")})\s*:\s*)`;
const PARTS = new RegExp(String.raw`^\s*${ROLE}?(?:${SET}|${LIST}|${AMOUNT})${VALUE}`, "u");
/** Without these there is no match for `PARTS`, whose making alone takes as long as ten keystrokes. */
const MAY_NAME_PARTS = /\d|(?:all|of)\s/;
const ONE_WORD = /^\s*(?:#|see\s*:\s*#?)\p{L}(?:[\p{L}\d._-]*[\p{L}\d])?/u;
const ROLE_ALONE = new RegExp(String.raw`^\s*${ROLE}`, "u");
const PARTS_BEFORE = new RegExp(String.raw`(?<![\p{L}\d_/&#$.-])${LIST}$`, "u");
/** How much text before a lone `]` is looked at. */
const LOOK_BACK = 200;

const NOT_CLOSED =
  "The mark that begins here has no closing bracket, so Markdown takes it for plain text and nothing in it is counted.";

/** A role word as it may open a mark: capital letter or not. */
function anyCase(word: string): string {
  return `[${word[0]}${word[0]!.toUpperCase()}]${word.slice(1)}`;
}

/** Follows the brackets that are plain text through one block. */
export class BracketTally {
  readonly #source: string;
  /** Open brackets, and where the text behind each ends: at the next bracket, or with its stretch. */
  #open: { readonly at: number; to: number }[] = [];
  #problems: SyntaxProblem[] = [];
  #quoted = false;

  constructor(source: string) {
    this.#source = source;
  }

  /** Begins a block; `quoted` says whether quotes enclose it. */
  begin(quoted: boolean): void {
    this.#open = [];
    this.#problems = [];
    this.#quoted = quoted;
  }

  /** Takes in a stretch of plain text. */
  text(from: number, to: number): void {
    let behind = from;
    for (const at of bracketsIn(this.#source, from, to)) {
      const last = this.#open.at(-1);
      if (last) last.to = Math.min(last.to, at);
      if (this.#source[at] === "[") this.#open.push({ at, to });
      else this.#close(behind, at);
      behind = at + 1;
    }
  }

  /** Takes in a `]` that has its problem already. */
  closed(): void {
    this.#open.pop();
  }

  /** What is wrong with the brackets of the block, which ends here. */
  end(): readonly SyntaxProblem[] {
    for (const { at, to } of this.#open) {
      // Just opened: there is nothing yet to be meant, and to look for it would take longest.
      if (to === at + 1) continue;
      const picture = this.#source[at - 1] === "!";
      this.#add(picture ? undefined : unclosed(this.#inside(at, to), this.#wrongBracket(at)));
    }
    return this.#problems;
  }

  #close(from: number, at: number): void {
    const open = this.#open.pop();
    if (!open) this.#add(unopened(this.#source, Math.max(from, at - LOOK_BACK), at));
    else if (at - open.at > MAX_MARK) this.#add(tooLong(this.#inside(open.at, open.to)));
  }

  #add(problem: SyntaxProblem | undefined): void {
    if (problem) this.#problems.push(problem);
  }

  /** The sign that stands in the place of a `]`: a brace, or a `)` that no `(` before goes with. */
  #wrongBracket(open: number): RegExp {
    const before = this.#source.slice(Math.max(0, open - LOOK_BACK), open);
    return before.lastIndexOf("(") > before.lastIndexOf(")") ? /^\}/ : /^[)}]/;
  }

  /** The text behind the bracket at `open`, without the signs of quotes at its lines' starts. */
  #inside(open: number, to: number): MappedText {
    const lines: SourceLine[] = [];
    let offset = open + 1;
    const source = this.#source.slice(offset, Math.min(to, offset + MAX_MARK));
    for (const line of source.split("\n")) {
      const prefix = lines.length === 0 ? 0 : this.#prefixOf(line);
      const raw = line.slice(prefix).replace(/\r$/, "");
      lines.push({ raw, offset: offset + prefix, ending: "\n" });
      offset += line.length + 1;
    }
    return MappedText.decode(lines);
  }

  #prefixOf(line: string): number {
    return (this.#quoted ? /^(?:[ \t]*>)*[ \t]*/ : /^[ \t]*/).exec(line)![0].length;
  }
}

/** Offsets of the brackets in a stretch of the source that no backslash makes plain. */
function* bracketsIn(source: string, from: number, to: number): Iterable<number> {
  const text = source.slice(from, to);
  if (!/[[\]]/.test(text)) return;
  for (const { index, 0: sign } of text.matchAll(/\\.|[[\]]/gs)) {
    if (sign.length === 1) yield from + index;
  }
}

function tooLong(inside: MappedText): SyntaxProblem | undefined {
  if (!PARTS.test(inside.text)) return undefined;
  return {
    span: bracketBefore(inside, 0),
    message:
      `A mark longer than ${MAX_MARK} characters is not read, so none of its parts is counted. ` +
      "Write ranges, or make two marks of it.",
  };
}

function unclosed(inside: MappedText, wrongBracket: RegExp): SyntaxProblem | undefined {
  const parts = MAY_NAME_PARTS.test(inside.text) ? PARTS.exec(inside.text) : null;
  const match = parts ?? ONE_WORD.exec(inside.text);
  if (!match) return unclosedText(inside);
  const written = inside.slice(0, match[0].length);
  const wrong = wrongBracket.test(inside.text.slice(match[0].length)) ? 1 : 0;
  const better = mendedMark(written.text);
  const { start, end } = written.trim().span();
  return {
    span: bracketBefore(inside, match[0].length),
    message: `${NOT_CLOSED} Close it with ] after ${lastOf(written.text)}.`,
    suggestion:
      better === undefined
        ? { title: "Write ]", span: { start: end, end: end + wrong }, text: "]" }
        : { title: `Write [${better}]`, span: { start, end: end + wrong }, text: `${better}]` },
  };
}

/** A role word with free text behind it, whose end only the author knows. */
function unclosedText(inside: MappedText): SyntaxProblem | undefined {
  const match = ROLE_ALONE.exec(inside.text);
  if (!match) return undefined;
  const role = match[0].trimEnd();
  return {
    span: bracketBefore(inside, role.length),
    message: `${NOT_CLOSED} Close it with ] after what follows "${role.trimStart()}".`,
  };
}

/** A `]` at `close` with designators right before it, none of them before `from`. */
function unopened(source: string, from: number, close: number): SyntaxProblem | undefined {
  const match = PARTS_BEFORE.exec(source.slice(from, close));
  if (!match) return undefined;
  const start = from + match.index;
  const [written] = match;
  const better = mendedMark(written);
  return {
    span: { start, end: close + 1 },
    message:
      `No bracket opens before ${written}, so Markdown takes this for plain text and nothing in it is ` +
      "counted. Write [ before the first part, or take the ] away.",
    suggestion:
      better === undefined
        ? { title: "Write [", span: { start, end: start }, text: "[" }
        : { title: `Write [${better}]`, span: { start, end: close }, text: `[${better}` },
  };
}

/** The opening bracket and the first characters inside it. */
function bracketBefore(inside: MappedText, length: number): Span {
  return { start: inside.offsetAt(0) - 1, end: inside.offsetAt(length) };
}

function lastOf(text: string): string {
  return text.trim().split(/\s/).at(-1)!;
}
