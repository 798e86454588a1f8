/** The words for operations that have no result. */
import type { Span } from "../../text/span.ts";
import { printRange } from "../printRange.ts";
import type { FigureProblem } from "../problem.ts";
import { holdsZero } from "./interval.ts";
import {
  EXPONENTIAL,
  LOGARITHM,
  type Operation,
  PARALLEL,
  POWER,
  QUOTIENT,
  ROOT,
} from "./operations.ts";
import type { Term } from "./value.ts";

/** Why the operation has no result for these operands. `holds` is what a formula says of its range. */
export function noResult(
  operation: Operation,
  args: readonly Term[],
  span: Span,
  holds: string | undefined,
): FigureProblem {
  return { kind: "form", span, message: reason(operation, args, holds) };
}

function reason(operation: Operation, args: readonly Term[], holds: string | undefined): string {
  if (holds !== undefined) return `The formula has no value for these arguments. Range: ${holds}`;
  const operand = args.at(
    operation === ROOT || operation === LOGARITHM || operation === POWER ? 0 : -1,
  )!;
  const { range, nominal } = operand.node;
  if (operation === QUOTIENT && holdsZero(range)) {
    if (!operand.node.varies) return "This divides by zero, which has no result.";
    return `The divisor can be zero: with tolerances it lies between ${printRange(operand)}. Then the result has no limit.`;
  }
  if (operation === ROOT && range.low < 0) {
    if (nominal < 0) return "The root of a negative quantity has no value. Check the signs.";
    return `What is below the root can be negative: with tolerances it lies between ${printRange(operand)}.`;
  }
  if (operation === LOGARITHM && range.low <= 0) {
    return "The logarithm has a value above zero only, and this can be zero or less.";
  }
  if (operation === POWER && range.low <= 0) {
    return "A power with this exponent has a value only for what is above zero.";
  }
  if (args.length === 1 && holdsZero(range) && operation !== EXPONENTIAL) {
    return "This divides by zero, which has no result.";
  }
  if (operation === PARALLEL && args.every((arg) => Math.abs(arg.node.nominal) < 1e150)) {
    return "The two sides of ∥ can cancel each other, and then the result has no limit. Check the signs.";
  }
  return "The result is too large for a number. Check exponents and units.";
}
