/**
 * Computes an expression: puts values for names, holds the units against each other, and builds the
 * graph of its operations. What has no value throws a FigureError with the place.
 */
import type { Span } from "../../text/span.ts";
import { isPlain, multiplied, NO_DIMENSION, raised, sameDimension } from "../dimension.ts";
import type { Call, Expression, NameUse, NumberLiteral, Operation } from "../expression/tree.ts";
import { CONSTANTS, type FormulaFunctions } from "../functions.ts";
import { FigureError } from "../problem.ts";
import { resultUnit } from "../resultUnits.ts";
import { toleranceLimits } from "../tolerance.ts";
import { unitSymbol } from "../unitMeanings.ts";
import { readWholeUnit } from "../unitText.ts";
import * as clash from "./clashes.ts";
import { noResult } from "./failures.ts";
import { fill, formula } from "./formula.ts";
import { Node } from "./node.ts";
import * as op from "./operations.ts";
import type { FigureWarning, Term } from "./value.ts";
import { worstCase } from "./worstCase.ts";

/** Where names get their values. */
export interface Names {
  readonly functions: FormulaFunctions;
  /**
   * The value of a figure or part; undefined for a name that is neither. Throws a FigureError when
   * it is known but has no value.
   */
  resolve(name: NameUse): Term | undefined;
  /** The error for a name that means nothing. */
  unknown(name: NameUse): FigureError;
}

export class Computation {
  readonly warnings: FigureWarning[] = [];
  readonly #names: Names;

  constructor(names: Names) {
    this.#names = names;
  }

  /** Throws a FigureError where it has no value. */
  term(expression: Expression): Term {
    switch (expression.kind) {
      case "number":
        return number(expression);
      case "name":
        return this.#name(expression);
      case "negation":
        return this.#negation(expression.of, expression.span);
      case "operation":
        return this.#operation(expression);
      case "call":
        return this.#call(expression);
    }
  }

  #name(use: NameUse): Term {
    const constant = use.subjects.length === 0 ? CONSTANTS.get(use.symbol) : undefined;
    if (constant !== undefined) return exact(constant);
    const known = this.#names.resolve(use);
    if (known) return known;
    const unit = use.subjects.length === 0 && !use.board ? unitSymbol(use.symbol) : undefined;
    if (!unit || unit.scale) throw this.#names.unknown(use);
    const amount = Number(`1e${unit.exponent}`) * unit.factor;
    return { ...exact(amount), dimension: unit.dimension, unit: unit.coherent };
  }

  #negation(of: Expression, span: Span): Term {
    const term = this.term(of);
    // −5 °C is a temperature; the negative of a computed one is none.
    if (term.isPoint && of.kind !== "number") throw clash.pointUsed(span);
    return { ...term, node: this.#node(op.NEGATION, [term], span) };
  }

  #operation(expression: Operation): Term {
    const { operator, operatorSpan: span } = expression;
    const left = this.term(expression.left);
    const right = this.term(expression.right);
    switch (operator) {
      case "+":
      case "-":
        return this.#sum(left, right, expression);
      case "*":
        return this.#join(op.PRODUCT, left, right, span, productUnit(left, right), 1);
      case "/":
        return this.#join(op.QUOTIENT, left, right, span, quotientUnit(left, right), -1);
      case "∥":
        if (left.isPoint || right.isPoint) throw clash.pointUsed(span);
        if (!sameDimension(left.dimension, right.dimension)) {
          throw clash.different(left, right, span, "put in parallel");
        }
        return this.#like(left, op.PARALLEL, [left, right], span);
      case "^":
        return this.#power(left, right, expression);
    }
  }

  #sum(left: Term, right: Term, expression: Operation): Term {
    const { operator, operatorSpan: span } = expression;
    const adds = operator === "+";
    if (!sameDimension(left.dimension, right.dimension)) {
      throw clash.different(left, right, span, adds ? "added" : "subtracted");
    }
    const operation = adds ? op.SUM : op.DIFFERENCE;
    if (left.isPoint && right.isPoint) {
      if (adds) throw clash.pointsAdded(span);
      return { ...this.#like(left, operation, [left, right], span), isPoint: false, unit: "K" };
    }
    if (right.isPoint && !adds) throw clash.pointSubtracted(span);
    const base = right.isPoint ? right : left;
    return this.#like(base, operation, [left, right], span);
  }

  #join(
    operation: op.Operation,
    left: Term,
    right: Term,
    span: Span,
    unit: string | undefined,
    power: 1 | -1,
  ): Term {
    if (left.isPoint || right.isPoint) throw clash.pointUsed(span);
    const dimension = multiplied(left.dimension, right.dimension, power);
    return {
      node: this.#node(operation, [left, right], span),
      dimension,
      isPoint: false,
      unit: unit ?? resultUnit(dimension),
      figures: Math.min(left.figures, right.figures),
    };
  }

  #power(base: Term, exponent: Term, { operatorSpan: span }: Operation): Term {
    if (base.isPoint || exponent.isPoint) throw clash.pointUsed(span);
    if (!isPlain(exponent.dimension)) throw clash.exponentWithUnit(exponent, span);
    const { node } = exponent;
    if (!isPlain(base.dimension) && node.varies) throw clash.exponentVaries(span);
    const whole = !node.varies && Number.isInteger(node.nominal) && Math.abs(node.nominal) <= 100;
    const dimension = raised(base.dimension, isPlain(base.dimension) ? 1 : node.nominal);
    return {
      node: whole
        ? this.#node(op.wholePower(node.nominal), [base], span)
        : this.#node(op.POWER, [base, exponent], span),
      dimension,
      isPoint: false,
      unit: resultUnit(dimension),
      figures: Math.min(base.figures, exponent.figures),
    };
  }

  #call(call: Call): Term {
    const { name, span } = call;
    if (this.#names.functions.has(name)) return this.#formula(call);
    const args = call.args.map((argument) => this.term(argument as Expression));
    const [first] = args;
    if (name === "min" || name === "max") return this.#extreme(call, args);
    if (first!.isPoint) throw clash.pointUsed(span);
    if (name === "abs") return this.#like(first!, op.MAGNITUDE, args, span);
    if (name === "sqrt") {
      const dimension = raised(first!.dimension, 0.5);
      return { ...this.#like(first!, op.ROOT, args, span), dimension, unit: resultUnit(dimension) };
    }
    if (!isPlain(first!.dimension)) throw clash.plainNumberWanted(name, first!, span);
    return { ...this.#like(first!, PLAIN_FUNCTIONS[name]!, args, span), unit: "1" };
  }

  #extreme({ name, span }: Call, args: readonly Term[]): Term {
    const operation = name === "min" ? op.LEAST : op.GREATEST;
    return args.reduce((result, next) => {
      const comparable =
        sameDimension(result.dimension, next.dimension) && result.isPoint === next.isPoint;
      if (!comparable) throw clash.different(result, next, span, "compared");
      return this.#like(result, operation, [result, next], span);
    });
  }

  #formula(call: Call): Term {
    const fn = this.#names.functions.get(call.name)!;
    const words: (string | undefined)[] = [];
    const terms: Term[] = [];
    for (const [i, parameter] of fn.parameters.entries()) {
      const argument = call.args[i];
      if (parameter.unit === "word") {
        words.push(argument?.kind === "word" ? argument.text : String(parameter.default));
        continue;
      }
      words.push(undefined);
      if (!argument) {
        terms.push(exact(Number(parameter.default)));
        continue;
      }
      const term = this.term(argument as Expression);
      const wanted = readWholeUnit(parameter.unit)!;
      const isPoint = wanted.scale === "celsius";
      if (!sameDimension(term.dimension, wanted.dimension) || term.isPoint !== isPoint) {
        throw clash.argument(call.name, parameter, term, argument.span);
      }
      terms.push(term);
    }
    const node = this.#node(formula(fn, words), terms, call.span, fn.range);
    const numbers = terms.map((term) => term.node.nominal);
    const message = fn.warn?.(fill(words, numbers));
    if (message) this.warnings.push({ span: call.span, message });
    const unit = readWholeUnit(fn.unit)!;
    return {
      node,
      dimension: unit.dimension,
      isPoint: unit.scale === "celsius",
      unit: unit.coherent,
      figures: Math.min(...terms.map((term) => term.figures), Infinity),
    };
  }

  /** A result of the same kind as `term`. */
  #like(term: Term, operation: op.Operation, args: readonly Term[], span: Span): Term {
    return {
      ...term,
      node: this.#node(operation, args, span),
      figures: Math.min(...args.map((arg) => arg.figures)),
    };
  }

  #node(operation: op.Operation, args: readonly Term[], span: Span, holds?: string): Node {
    const nodes = args.map((arg) => arg.node);
    const node = Node.of(operation, nodes, worstCase);
    if (node) return node;
    throw new FigureError(noResult(operation, args, span, holds));
  }
}

const PLAIN_FUNCTIONS: { readonly [name: string]: op.Operation } = {
  ln: op.LOGARITHM,
  exp: op.EXPONENTIAL,
  sin: op.SINE,
  cos: op.COSINE,
};

function exact(value: number): Term {
  return {
    node: Node.constant(value),
    dimension: NO_DIMENSION,
    isPoint: false,
    unit: "1",
    figures: Infinity,
  };
}

function number({ amount, unit, figures, tolerance }: NumberLiteral): Term {
  const limits = tolerance === undefined ? undefined : toleranceLimits(tolerance, amount);
  return {
    node: limits ? Node.input(amount, limits.min, limits.max) : Node.constant(amount),
    dimension: unit.dimension,
    isPoint: unit.scale === "celsius",
    unit: unit.coherent,
    figures: figures ?? Infinity,
  };
}

/** The unit of a product where it is not told by the dimension: a number times N·m, or N times m. */
function productUnit(left: Term, right: Term): string | undefined {
  if (isPlain(right.dimension)) return right.unit === "1" || left.unit !== "1" ? left.unit : "1";
  if (isPlain(left.dimension)) return right.unit;
  const units = [left.unit, right.unit];
  return units.includes("N") && units.includes("m") ? "N·m" : undefined;
}

function quotientUnit(left: Term, right: Term): string | undefined {
  return isPlain(right.dimension) && !isPlain(left.dimension) ? left.unit : undefined;
}
