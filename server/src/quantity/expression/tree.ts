/** The tree of an expression. Spans count in the expression's own text. */
import type { Span } from "../../text/span.ts";
import type { UnitMeaning } from "../unitMeanings.ts";

export type Expression = NumberLiteral | NameUse | Call | Negation | Operation;

/** `13.8 V`, `4k7`, `AWG 24`, `0.25`. */
export interface NumberLiteral {
  readonly kind: "number";
  readonly span: Span;
  /** In the coherent SI unit; a temperature that stands alone in °C stays in °C. */
  readonly amount: number;
  readonly unit: UnitMeaning;
  /** Figures written, without zeros in front; undefined for a whole number without unit. */
  readonly figures: number | undefined;
  /** Of a letter-for-point code with a tolerance letter: `4k7J` has 5 %. */
  readonly tolerance?: string;
}

/** A figure's name, a designator, or a unit that stands alone. */
export interface NameUse {
  readonly kind: "name";
  readonly span: Span;
  /** `P` of `P(R50)`. */
  readonly symbol: string;
  readonly symbolSpan: Span;
  readonly subjects: readonly Subject[];
  /** `relay` of `relay/R1`. */
  readonly board?: string;
}

export interface Subject {
  readonly text: string;
  readonly span: Span;
}

/** A function of the expression language or of the trade. */
export interface Call {
  readonly kind: "call";
  readonly span: Span;
  readonly name: string;
  readonly nameSpan: Span;
  readonly args: readonly Argument[];
}

export type Argument = Expression | WordArgument;

/** A key such as `M3` or `TO-220`, handed to the function as written. */
export interface WordArgument {
  readonly kind: "word";
  readonly span: Span;
  readonly text: string;
}

export interface Negation {
  readonly kind: "negation";
  readonly span: Span;
  readonly of: Expression;
}

export type Operator = "+" | "-" | "*" | "/" | "^" | "∥";

export interface Operation {
  readonly kind: "operation";
  readonly span: Span;
  readonly operator: Operator;
  readonly operatorSpan: Span;
  readonly left: Expression;
  readonly right: Expression;
}

/** Whether the expression is a plain quantity: one number, be it with a sign. */
export function isQuantity(expression: Expression): boolean {
  if (expression.kind === "negation") return expression.of.kind === "number";
  return expression.kind === "number";
}

/** The names in an expression, in their order. */
export function* namesIn(expression: Expression | WordArgument): Generator<NameUse, void, void> {
  switch (expression.kind) {
    case "name":
      yield expression;
      return;
    case "negation":
      yield* namesIn(expression.of);
      return;
    case "operation":
      yield* namesIn(expression.left);
      yield* namesIn(expression.right);
      return;
    case "call":
      for (const argument of expression.args) yield* namesIn(argument);
  }
}
