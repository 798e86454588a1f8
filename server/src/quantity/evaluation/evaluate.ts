/** Evaluates what a figure says: an expression and the tolerance behind it. */
import { isPlain, sameDimension } from "../dimension.ts";
import type { Parsed } from "../expression/parse.ts";
import { type Expression, isQuantity } from "../expression/tree.ts";
import { printAmount } from "../printing.ts";
import { FigureError, type FigureProblem } from "../problem.ts";
import { Computation, type Names } from "./compute.ts";
import { extentOf } from "./extent.ts";
import { Node } from "./node.ts";
import { PRODUCT, SUM } from "./operations.ts";
import { type FigureValue, type FigureWarning, figureValue, type Term } from "./value.ts";
import { worstCase } from "./worstCase.ts";

/** A parsed expression, and its tolerance behind `±` or its upper end behind `…`. */
export interface Sum {
  readonly expression: Parsed;
  readonly tolerance?: Parsed;
  readonly upTo?: Parsed;
  /** Limits set for a reading: what the expression's own inputs tolerate does not widen them. */
  readonly isReading?: boolean;
}

export type SumPart = "expression" | "tolerance" | "upTo";

export interface Evaluation {
  /** Absent where the figure has no value; `problem` then says why. */
  readonly value?: FigureValue;
  readonly problem?: FigureProblem;
  /** The part of the figure whose text the problem's span counts in. */
  readonly problemIn?: SumPart;
  readonly warnings: readonly FigureWarning[];
  /** How many nodes the value hangs on: what it costs to compute with it. */
  readonly size: number;
}

/** Never throws. */
export function evaluate(sum: Sum, names: Names): Evaluation {
  const computation = new Computation(names);
  const { warnings } = computation;
  let part: SumPart = "expression";
  try {
    let term = computation.term(expressionOf(sum.expression));
    if (sum.isReading) term = { ...term, node: Node.constant(term.node.nominal) };
    if (sum.upTo) {
      part = "upTo";
      term = between(term, expressionOf(sum.upTo), computation);
    }
    if (sum.tolerance) {
      part = "tolerance";
      term = withTolerance(term, expressionOf(sum.tolerance), computation);
    }
    const { size, isExact } = extentOf(term.node);
    if (!isExact) worstCase(term.node);
    return { value: figureValue(term), warnings, size };
  } catch (error) {
    if (!(error instanceof FigureError)) throw error;
    return { problem: error.problem, problemIn: part, warnings, size: 0 };
  }
}

function expressionOf(parsed: Parsed): Expression {
  if (parsed.problem) throw new FigureError(parsed.problem);
  return parsed.expression!;
}

const TOO_LARGE = "With this tolerance the value is too large for a number.";

/** What lies between the term and an upper end; the middle is the nominal. */
function between(lower: Term, written: Expression, computation: Computation): Term {
  const upper = computation.term(written);
  const { span } = written;
  // Nought is the same in each unit, but for a temperature.
  const isNought = isPlain(lower.dimension) && lower.node.nominal === 0 && !upper.isPoint;
  const term = isNought ? { ...upper, node: lower.node } : lower;
  if (!sameDimension(term.dimension, upper.dimension) || term.isPoint !== upper.isPoint) {
    const message = `The lower end ${inUnit(term)}, but the upper one ${inUnit(upper)}.`;
    throw new FigureError({ kind: "unit", span, message });
  }
  const [low, high] = [term.node.nominal, upper.node.nominal];
  if (low > high) {
    const [from, to] = [low, high].map((end) => printAmount(end, term.unit, 3));
    const message = `From ${from} to ${to} it goes down, but the lower end comes first. Swap the two, or give each its unit.`;
    throw new FigureError({ kind: "form", span, message });
  }
  return { ...term, node: Node.input(low + (high - low) / 2, low, high) };
}

function inUnit({ dimension, unit }: Term): string {
  return isPlain(dimension) ? "has no unit" : `is in ${unit}`;
}

function inAmount({ dimension, unit }: Term): string {
  return isPlain(dimension) ? "Write it without %." : `Write it as an amount in ${unit}.`;
}

/** The term as an input with limits of its own, beside those of what it is computed from. */
function withTolerance(term: Term, written: Expression, computation: Computation): Term {
  const tolerance = computation.term(written);
  const fail = (kind: "form" | "unit", message: string): never => {
    throw new FigureError({ kind, span: written.span, message });
  };
  const size = tolerance.node.nominal;
  if (tolerance.node.varies) fail("form", "A tolerance is a fixed amount and has none of its own.");
  if (size < 0) fail("form", "A tolerance is not below zero. Remove its sign.");
  // 55 % ± 5 % are five points of per cent; 13.8 V ± 5 % is a share of 13.8 V.
  if (tolerance.unit === "%" && term.unit !== "%") {
    if (size > 1) {
      fail(
        "form",
        "A tolerance above 100 % would let the value change its sign. Check the figure.",
      );
    }
    if (size > 0 && term.node.nominal === 0 && !term.node.varies && !term.isPoint) {
      fail(
        "form",
        `A share of nothing is nothing, so this tolerance allows none. ${inAmount(term)}`,
      );
    }
    if (term.isPoint) {
      fail("unit", "A share of a temperature in °C has no meaning. Write the tolerance in K.");
    }
    return { ...term, node: scaled(term.node, size) ?? fail("form", TOO_LARGE) };
  }
  if (!sameDimension(tolerance.dimension, term.dimension)) {
    if (isPlain(tolerance.dimension)) {
      fail("unit", `The tolerance has no unit. Write a share in %, or an amount in ${term.unit}.`);
    }
    fail("unit", `The value is in ${term.unit}, but its tolerance in ${tolerance.unit}.`);
  }
  if (tolerance.isPoint && !isQuantity(written)) {
    fail("unit", "A tolerance is a difference. Write it in K.");
  }
  return { ...term, node: moved(term.node, size) ?? fail("form", TOO_LARGE) };
}

function scaled(node: Node, share: number): Node | undefined {
  if (!node.varies) return limited(node.nominal, Math.abs(node.nominal) * share);
  return Node.of(PRODUCT, [node, Node.input(1, 1 - share, 1 + share)], worstCase);
}

function moved(node: Node, reach: number): Node | undefined {
  if (!node.varies) return limited(node.nominal, reach);
  return Node.of(SUM, [node, Node.input(0, -reach, reach)], worstCase);
}

function limited(nominal: number, reach: number): Node | undefined {
  const [min, max] = [nominal - reach, nominal + reach];
  return Number.isFinite(min) && Number.isFinite(max) ? Node.input(nominal, min, max) : undefined;
}
