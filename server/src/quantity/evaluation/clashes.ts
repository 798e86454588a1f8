/** The words for units that do not agree; each stands on the operator or the argument. */
import type { Span } from "../../text/span.ts";
import type { FormulaParameter } from "../functions.ts";
import { FigureError } from "../problem.ts";
import type { Term } from "./value.ts";

function clash(span: Span, message: string): FigureError {
  return new FigureError({ kind: "unit", span, message });
}

export function different(left: Term, right: Term, span: Span, verb: string): FigureError {
  const [one, other] = [nameOf(left), nameOf(right)];
  if (right.unit === "%") {
    return clash(
      span,
      `A percentage cannot be ${verb} here, since it does not say of what. Write * (1 + 10 %), or give a tolerance with ±.`,
    );
  }
  return clash(span, `${one} and ${other} cannot be ${verb}. Correct the unit on one side.`);
}

/** `V`, or words for what has no unit. */
function nameOf({ unit }: Term): string {
  return unit === "1" ? "a plain number" : unit;
}

export function pointsAdded(span: Span): FigureError {
  return clash(
    span,
    "Two temperatures in °C cannot be added. Write the one that is a difference in K.",
  );
}

export function pointSubtracted(span: Span): FigureError {
  return clash(
    span,
    "A temperature in °C cannot be taken from a difference in K. Exchange the sides, or write the difference in K.",
  );
}

export function pointUsed(span: Span): FigureError {
  return clash(
    span,
    "A temperature in °C is a point on a scale and cannot be used here. Subtract another temperature first, or write a difference in K.",
  );
}

export function exponentWithUnit(exponent: Term, span: Span): FigureError {
  return clash(span, `An exponent is a plain number, and this one is in ${exponent.unit}.`);
}

export function exponentVaries(span: Span): FigureError {
  return clash(
    span,
    "A quantity with a unit needs an exponent without tolerance, or its unit is not known.",
  );
}

export function plainNumberWanted(name: string, given: Term, span: Span): FigureError {
  const hint = name === "sin" || name === "cos" ? " or an angle" : "";
  return clash(
    span,
    `${name} takes a plain number${hint}, and ${given.unit} is given. Divide by a quantity of the same kind first.`,
  );
}

export function argument(
  name: string,
  parameter: FormulaParameter,
  given: Term,
  span: Span,
): FigureError {
  const wanted = parameter.unit === "1" ? "as a plain number" : `in ${parameter.unit}`;
  return clash(
    span,
    `${name} takes \`${parameter.name}\` ${wanted}, and ${nameOf(given)} is given.`,
  );
}
