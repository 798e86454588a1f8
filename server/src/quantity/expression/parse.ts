/**
 * Parses expressions such as `Iq^2 * R50` into a tree with the span of each part. By recursive
 * descent; how deep brackets may nest is limited, so no text can exhaust the stack.
 *
 *     sum      = product { ("+" | "-") product }
 *     product  = parallel { ("*" | "/") parallel }
 *     parallel = signed { "∥" signed }
 *     signed   = [ "-" | "+" ] power
 *     power    = primary [ "^" signed | "²" | "³" ]
 *     primary  = number | name | call | "(" sum ")"
 */
import type { Span } from "../../text/span.ts";
import { ARITHMETIC, type FormulaFunctions } from "../functions.ts";
import { FigureError, type FigureProblem } from "../problem.ts";
import { readGauge, readNumber, startsNumber } from "./number.ts";
import {
  missingOperand,
  missingSubject,
  strayComma,
  tooDeep,
  tooLong,
  unclosedBracket,
  unexpected,
  unknownFunction,
  wrongCount,
} from "./parseProblems.ts";
import type { Argument, Call, Expression, Operator, Subject } from "./tree.ts";

/** Longest expression that is read, in characters. */
const MAX_EXPRESSION = 500;
const MAX_DEPTH = 50;

/** What the parser must know of the guide. */
export interface ParseContext {
  readonly functions: FormulaFunctions;
  isBoard(name: string): boolean;
}

export type Parsed =
  | { readonly expression: Expression; readonly problem?: undefined }
  | { readonly problem: FigureProblem; readonly expression?: undefined };

/** Parses the whole text. Never throws. */
export function parseExpression(text: string, context: ParseContext): Parsed {
  if (text.length > MAX_EXPRESSION) return { problem: tooLong(text, MAX_EXPRESSION) };
  try {
    return { expression: new Parser(text, context).parse() };
  } catch (error) {
    if (error instanceof FigureError) return { problem: error.problem };
    throw error;
  }
}

const SPACES = /[\s\u00a0\u2007\u2009\u202f]*/uy;
const NAME = /[\p{L}_][\p{L}\p{Nd}_₀-₉]*/uy;
const GAUGE = /^AWG\d{0,2}$/;
const SUBJECTS = /[^()=±;<>]*/uy;

const OPERATORS: { readonly [sign: string]: Operator } = {
  "+": "+",
  "-": "-",
  "\u2212": "-",
  "*": "*",
  "·": "*",
  "⋅": "*",
  "×": "*",
  "/": "/",
  "÷": "/",
  "^": "^",
  "²": "^",
  "³": "^",
  "∥": "∥",
};

class Parser {
  readonly #text: string;
  readonly #context: ParseContext;
  #at = 0;
  #depth = 0;

  constructor(text: string, context: ParseContext) {
    this.#text = text;
    this.#context = context;
  }

  parse(): Expression {
    const expression = this.#sum();
    if (this.#next() !== "") this.#fail(unexpected(this.#text, this.#at));
    return expression;
  }

  #sum(): Expression {
    return this.#chain("+-", () => this.#product());
  }

  #product(): Expression {
    return this.#chain("*/", () => this.#parallel());
  }

  #parallel(): Expression {
    return this.#chain("∥", () => this.#signed());
  }

  #chain(operators: string, operand: () => Expression): Expression {
    let left = operand();
    for (;;) {
      const operator = OPERATORS[this.#next()];
      if (!operator || !operators.includes(operator)) return left;
      const operatorSpan = this.#take();
      left = operation(left, operator, operatorSpan, operand());
    }
  }

  #signed(): Expression {
    const operator = OPERATORS[this.#next()];
    if (operator !== "+" && operator !== "-") return this.#power();
    const { start } = this.#take();
    const of = this.#nested(() => this.#signed());
    return operator === "+" ? of : { kind: "negation", span: { start, end: of.span.end }, of };
  }

  #power(): Expression {
    let base = this.#primary();
    for (;;) {
      const sign = this.#next();
      if (sign !== "²" && sign !== "³") break;
      const span = this.#take();
      const exponent = readNumber(sign === "²" ? "2" : "3", 0);
      base = operation(base, "^", span, { ...exponent, span });
    }
    if (this.#next() !== "^") return base;
    const span = this.#take();
    return operation(
      base,
      "^",
      span,
      this.#nested(() => this.#signed()),
    );
  }

  #primary(): Expression {
    const sign = this.#next();
    if (sign === "(") {
      this.#take();
      const inner = this.#nested(() => this.#sum());
      this.#close();
      return inner;
    }
    if (startsNumber(this.#text, this.#at)) {
      const number = readNumber(this.#text, this.#at);
      this.#at = number.span.end;
      return number;
    }
    NAME.lastIndex = this.#at;
    const name = NAME.exec(this.#text)?.[0];
    if (name === undefined) {
      this.#next();
      return this.#fail(missingOperand(this.#text, this.#at));
    }
    return this.#named(name);
  }

  #named(name: string): Expression {
    const start = this.#at;
    const nameSpan = { start, end: start + name.length };
    this.#at = nameSpan.end;
    if (GAUGE.test(name)) {
      const gauge = readGauge(this.#text, start, start + "AWG".length);
      this.#at = gauge.span.end;
      return gauge;
    }
    const part = this.#partOfBoard(name, nameSpan);
    if (part) return part;
    if (this.#next() !== "(") return bareName(name, nameSpan);
    if (ARITHMETIC.has(name) || this.#context.functions.has(name)) {
      return this.#call(name, nameSpan);
    }
    const subjects = this.#subjects(name, nameSpan);
    const span = { start, end: this.#at };
    return { kind: "name", span, symbol: name, symbolSpan: nameSpan, subjects };
  }

  /** `relay/R1`, without spaces, where `relay` is a board. */
  #partOfBoard(board: string, { start }: Span): Expression | undefined {
    if (this.#text[this.#at] !== "/" || !this.#context.isBoard(board)) return undefined;
    NAME.lastIndex = this.#at + 1;
    const symbol = NAME.exec(this.#text)?.[0];
    if (symbol === undefined) return undefined;
    const symbolSpan = { start: this.#at + 1, end: this.#at + 1 + symbol.length };
    this.#at = symbolSpan.end;
    const span = { start, end: this.#at };
    return { kind: "name", span, symbol, symbolSpan, subjects: [], board };
  }

  /** `R50` and so on between the brackets of a figure's name. */
  #subjects(name: string, nameSpan: Span): Subject[] {
    const open = this.#take().end;
    SUBJECTS.lastIndex = open;
    const inside = SUBJECTS.exec(this.#text)![0];
    const end = open + inside.length;
    if (this.#text[end] === "(" || this.#text[end] === ";") {
      this.#fail(unknownFunction(name, nameSpan, this.#context.functions));
    }
    this.#at = end;
    this.#close();
    const subjects: Subject[] = [];
    let start = open;
    for (const piece of inside.split(",")) {
      const from = start + piece.length - piece.trimStart().length;
      const text = piece.trim();
      if (text === "") {
        this.#fail(missingSubject(name, { start: open - 1, end: this.#at }));
      }
      subjects.push({ text, span: { start: from, end: from + text.length } });
      start += piece.length + 1;
    }
    return subjects;
  }

  #call(name: string, nameSpan: Span): Call {
    this.#take();
    const parameters = this.#context.functions.get(name)?.parameters;
    const args: Argument[] = [];
    if (this.#next() !== ")") {
      for (;;) {
        const isWord = parameters?.[args.length]?.unit === "word";
        args.push(isWord ? this.#word() : this.#nested(() => this.#sum()));
        const sign = this.#next();
        if (sign === ",") this.#fail(strayComma(this.#at));
        if (sign !== ";") break;
        this.#take();
      }
    }
    this.#close();
    const call: Call = {
      kind: "call",
      span: { start: nameSpan.start, end: this.#at },
      name,
      nameSpan,
      args,
    };
    const wrong = wrongCount(call, this.#context.functions);
    if (wrong) this.#fail(wrong);
    return call;
  }

  #word(): Argument {
    this.#next();
    const start = this.#at;
    const text = /^[^;()]*/.exec(this.#text.slice(start))![0].trim();
    this.#at = start + text.length;
    return { kind: "word", span: { start, end: this.#at }, text };
  }

  #nested<T>(read: () => T): T {
    if (++this.#depth > MAX_DEPTH) {
      this.#fail(tooDeep(MAX_DEPTH, { start: this.#at, end: this.#text.length }));
    }
    const result = read();
    this.#depth--;
    return result;
  }

  /** The character that comes next, behind spaces; empty at the end. */
  #next(): string {
    SPACES.lastIndex = this.#at;
    SPACES.exec(this.#text);
    this.#at = SPACES.lastIndex;
    return this.#text[this.#at] ?? "";
  }

  #take(): Span {
    this.#next();
    return { start: this.#at, end: ++this.#at };
  }

  #close(): void {
    const sign = this.#next();
    if (sign === ")") {
      this.#at++;
      return;
    }
    this.#fail(sign === "" ? unclosedBracket(this.#text) : unexpected(this.#text, this.#at));
  }

  #fail(problem: FigureProblem): never {
    throw new FigureError(problem);
  }
}

function operation(
  left: Expression,
  operator: Operator,
  operatorSpan: Span,
  right: Expression,
): Expression {
  const span = { start: left.span.start, end: right.span.end };
  return { kind: "operation", span, operator, operatorSpan, left, right };
}

function bareName(symbol: string, span: Span): Expression {
  return { kind: "name", span, symbol, symbolSpan: span, subjects: [] };
}
