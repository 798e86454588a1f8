/**
 * Figures in micromark: decided at `{`, so that they bind tighter than emphasis. Braces that were
 * nearly a figure keep their ordinary Markdown; the `{` becomes a token that carries the problem.
 */
import type {
  Code,
  Construct,
  Effects,
  Extension,
  Point,
  State,
  TokenizeContext,
} from "micromark-util-types";
import type { Figure, SyntaxProblem } from "../dialect.ts";
import { readStretch, stretchBetween } from "../marks/lines.ts";
import { parseFigure } from "./parseFigure.ts";
import { pointOutStars } from "./stars.ts";
import { longFigure, unclosedFigure } from "./unclosed.ts";
import { MAX_FIGURE } from "./words.ts";

declare module "micromark-util-types" {
  interface TokenTypeMap {
    figure: "figure";
  }
  interface Token {
    _figure?: Figure;
  }
}

const DOLLAR = 36;
const LESS = 60;
const GREATER = 62;
const LEFT_BRACE = 123;
const BAR = 124;
const RIGHT_BRACE = 125;
/** `{{`, `{%`, `{#`, `{.` and `{:` belong to template and attribute languages. */
const FOREIGN = new Set<Code>([...codesOf("{%#.:")]);
const FORBIDDEN = new Set<Code>([null, ...codesOf("{[]|\\`")]);
/** A `<` before one of these may open HTML or an autolink. */
const OPENS_HTML = /[A-Za-z/!?]/;

export const figures: Extension = {
  text: { [LEFT_BRACE]: { name: "figure", tokenize: tokenizeFigure, resolveAll: pointOutStars } },
};

function tokenizeFigure(this: TokenizeContext, effects: Effects, ok: State, nok: State): State {
  if (this.previous === DOLLAR || this.previous === LEFT_BRACE || followsLink(this)) return nok;
  const scan = new FigureScan(this);
  const construct: Construct = {
    partial: true,
    tokenize: (inner, done, failed) => scan.tokenize(inner, done, failed),
  };
  return effects.attempt(construct, ok, (code) => {
    if (!scan.problem) return nok(code);
    effects.enter("almostMark", { _problem: scan.problem, _shown: "{" });
    effects.consume(code);
    effects.exit("almostMark");
    return ok;
  });
}

/** Braces right behind a link or image are its attributes in some renderers. */
function followsLink(context: TokenizeContext): boolean {
  const last = context.events.at(-1)?.[1].type;
  return last === "link" || last === "image";
}

/** One run over a pair of braces. */
class FigureScan {
  /** Why the braces are no figure though they were meant as one. */
  problem: SyntaxProblem | undefined;
  readonly #context: TokenizeContext;
  #effects!: Effects;
  #ok!: State;
  #nok!: State;
  #from!: Point;
  #firstEvent = 0;

  constructor(context: TokenizeContext) {
    this.#context = context;
  }

  tokenize(effects: Effects, ok: State, nok: State): State {
    this.#effects = effects;
    this.#ok = ok;
    this.#nok = nok;
    return (code) => {
      effects.enter("figure");
      effects.enter("dialectText");
      effects.consume(code);
      this.#from = this.#context.now();
      this.#firstEvent = this.#context.events.length;
      return this.#first;
    };
  }

  readonly #first: State = (code) => (FOREIGN.has(code) ? this.#nok(code) : this.#inside(code));

  readonly #inside: State = (code) => {
    if (code === RIGHT_BRACE) return this.#close(code);
    if (code === BAR) return this.#bar(code);
    if (this.#isTooLong() || FORBIDDEN.has(code)) return this.#unclosed(code);
    if ((code === LESS || code === GREATER) && !this.#isReading()) return this.#unclosed(code);
    if (isLineEnding(code)) return this.#lineEnding(code);
    this.#effects.consume(code);
    return code === LESS ? this.#afterLess : this.#inside;
  };

  /** Two bars are a near miss of ∥. */
  #bar(code: Code): State | undefined {
    if (this.#context.previous === BAR) return this.#unclosed(code);
    this.#effects.consume(code);
    return this.#afterBar;
  }

  readonly #afterBar: State = (code) => {
    if (code !== BAR) return this.#unclosed(code);
    this.#effects.consume(code);
    return this.#inside;
  };

  readonly #afterLess: State = (code) =>
    code !== null && code > 0 && OPENS_HTML.test(String.fromCharCode(code))
      ? this.#unclosed(code)
      : this.#inside(code);

  #lineEnding(code: Code): State {
    this.#effects.exit("dialectText");
    this.#effects.enter("lineEnding");
    this.#effects.consume(code);
    this.#effects.exit("lineEnding");
    return this.#lineStart;
  }

  readonly #lineStart: State = (code) => {
    if (!isSpace(code)) return this.#lineText(code);
    this.#effects.enter("linePrefix");
    return this.#linePrefix(code);
  };

  readonly #linePrefix: State = (code) => {
    if (isSpace(code)) {
      this.#effects.consume(code);
      return this.#linePrefix;
    }
    this.#effects.exit("linePrefix");
    return this.#lineText(code);
  };

  #lineText(code: Code): State | undefined {
    if (code === null || isLineEnding(code)) return this.#nok(code);
    this.#effects.enter("dialectText");
    return this.#inside(code);
  }

  #close(code: Code): State | undefined {
    const { text, shown } = this.#read();
    const result = parseFigure(text);
    if (!result || "almost" in result) {
      this.problem = result?.almost;
      return this.#nok(code);
    }
    this.#effects.consume(code);
    this.#effects.exit("dialectText");
    const token = this.#effects.exit("figure");
    token._figure = result.figure;
    token._shown = `{${shown}}`;
    return this.#ok;
  }

  #unclosed(code: Code): State | undefined {
    const text = this.#read().text;
    this.problem = this.#isTooLong() ? longFigure(text) : unclosedFigure(text);
    return this.#nok(code);
  }

  #read() {
    const { events } = this.#context;
    const inner = events.slice(this.#firstEvent);
    return readStretch(this.#context, stretchBetween(this.#from, this.#context.now(), inner));
  }

  #isTooLong(): boolean {
    return this.#context.now().offset - this.#from.offset > MAX_FIGURE;
  }

  /** Only a reading may hold `<` and `>`. */
  #isReading(): boolean {
    return /^\s*read\s/.test(this.#read().text.text);
  }
}

function* codesOf(signs: string): Generator<number> {
  for (let i = 0; i < signs.length; i++) yield signs.charCodeAt(i);
}

/** micromark's codes for CR, LF and CRLF. */
function isLineEnding(code: Code): boolean {
  return code !== null && code < -2;
}

/** A space, or micromark's codes for a tab and the columns it fills. */
function isSpace(code: Code): boolean {
  return code === 32 || code === -2 || code === -1;
}
