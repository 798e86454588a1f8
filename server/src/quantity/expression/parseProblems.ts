/** What is wrong with the form of an expression, in words. All spans are in the text that is parsed. */
import { nearestWord } from "../../text/nearest.ts";
import type { Span } from "../../text/span.ts";
import { ARITHMETIC, type FormulaFunctions } from "../functions.ts";
import type { FigureProblem } from "../problem.ts";
import type { Call } from "./tree.ts";

/** @param most characters that are read */
export function tooLong(text: string, most: number): FigureProblem {
  return {
    kind: "form",
    span: { start: 0, end: text.length },
    message: `This figure is longer than ${most} characters and is not computed. Give parts of it names of their own.`,
  };
}

/** @param most brackets and signs that may be nested */
export function tooDeep(most: number, span: Span): FigureProblem {
  return {
    kind: "form",
    span,
    message: `More than ${most} brackets or signs are nested here. Give parts of the sum names of their own.`,
  };
}

export function unclosedBracket(text: string): FigureProblem {
  const span = { start: 0, end: text.length };
  return {
    kind: "form",
    span,
    message: "A closing bracket is missing. Write ) where the group ends.",
  };
}

/** Nothing stands at `at` that a value or a name could be. */
export function missingOperand(text: string, at: number): FigureProblem {
  const sign = text[at];
  if (sign === undefined) {
    const span = { start: Math.max(0, text.trimEnd().length - 1), end: text.length };
    const message =
      "A value or a name is missing at the end. Write it, or remove the sign before it.";
    return { kind: "form", span, message };
  }
  const span = { start: at, end: at + 1 };
  const message = `A value or a name is missing before ${sign}. Write it, or remove the sign.`;
  return { kind: "form", span, message };
}

/** What stands at `at` cannot follow what is before it. */
export function unexpected(text: string, at: number): FigureProblem {
  const word = /^[\p{L}\p{Nd}_]+|^./u.exec(text.slice(at))![0];
  if (word === ",") return strayComma(at);
  const span = { start: at, end: at + word.length };
  if (word === ")") {
    const message = "This closing bracket has no opening one. Write ( before it, or remove it.";
    return { kind: "form", span, message };
  }
  const message = `${word} cannot stand here. Write a sign such as + or * before it, or remove it.`;
  return { kind: "form", span, message };
}

export function strayComma(at: number): FigureProblem {
  const span = { start: at, end: at + 1 };
  return {
    kind: "form",
    span,
    message:
      "A comma is a decimal comma here. Separate the arguments of a function by semicolons: min(1 V; 2 V).",
    suggestion: { title: "Write ;", span, text: ";" },
  };
}

export function missingSubject(name: string, span: Span): FigureProblem {
  return {
    kind: "form",
    span,
    message: `A name is missing in the brackets of ${name}. Write what it belongs to, such as ${name}(R1).`,
  };
}

export function unknownFunction(
  name: string,
  span: Span,
  functions: FormulaFunctions,
): FigureProblem {
  const meant = nearestWord(name, [...ARITHMETIC.keys(), ...functions.keys()]);
  const hint = meant
    ? ` Did you mean ${meant}?`
    : " Figures with several subjects separate them by commas: torque(Q1, Q2).";
  return {
    kind: "name",
    span,
    message: `There is no function ${name}.${hint}`,
    ...(meant && { suggestion: { title: `Write ${meant}`, span, text: meant } }),
  };
}

export function wrongCount(call: Call, functions: FormulaFunctions): FigureProblem | undefined {
  const parameters = functions.get(call.name)?.parameters;
  const least = parameters
    ? parameters.filter((one) => one.default === undefined).length
    : ARITHMETIC.get(call.name)!.least;
  const most = parameters ? parameters.length : ARITHMETIC.get(call.name)!.most;
  const given = call.args.length;
  if (given >= least && given <= most) return undefined;
  const names = parameters?.map((one) => one.name).join("; ") ?? (most > 1 ? "a; b; …" : "a");
  return {
    kind: "form",
    span: call.span,
    message: `${call.name} takes ${countText(least, most)}, and ${given === 0 ? "none is" : `${given} ${given === 1 ? "is" : "are"}`} given. Write ${call.name}(${names}).`,
  };
}

function countText(least: number, most: number): string {
  if (least !== most) return `${least} to ${most} arguments`;
  return least === 1 ? "one argument" : `${least} arguments`;
}
