/** Computes texts of figures in tests, with definitions given as `name: value ± tolerance`. */
import { type Evaluation, evaluate } from "../../server/src/quantity/evaluation/evaluate.ts";
import type { FigureValue } from "../../server/src/quantity/evaluation/value.ts";
import { parseExpression } from "../../server/src/quantity/expression/parse.ts";
import type { FormulaFunctions } from "../../server/src/quantity/functions.ts";
import { FigureError } from "../../server/src/quantity/problem.ts";

export type Definitions = Readonly<Record<string, string>>;

/** Evaluates `text`; definitions may use those before them. */
export function sum(
  text: string,
  definitions: Definitions = {},
  functions: FormulaFunctions = new Map(),
): Evaluation {
  const known = new Map<string, FigureValue>();
  const run = (written: string): Evaluation => {
    const context = { functions, isBoard: (name: string) => name === "relay" };
    const [value, tolerance] = written
      .split("±")
      .map((part) => parseExpression(part.trim(), context));
    return evaluate(
      { expression: value!, ...(tolerance && { tolerance }) },
      {
        functions,
        resolve: (use) => known.get([use.symbol, ...use.subjects.map((one) => one.text)].join(" ")),
        unknown: ({ span, symbol }) =>
          new FigureError({ kind: "name", span, message: `unknown ${symbol}` }),
      },
    );
  };
  for (const [name, written] of Object.entries(definitions)) {
    const { value, problem } = run(written);
    if (!value) throw new Error(`${name}: ${problem?.message}`);
    known.set(name, value);
  }
  return run(text);
}

/** The value; throws where there is none. */
export function computed(...args: Parameters<typeof sum>): FigureValue {
  const { value, problem } = sum(...args);
  if (!value) throw new Error(`${args[0]}: ${problem?.message}`);
  return value;
}

/** `kind "marked text": message` of the problem. */
export function problemOf(...args: Parameters<typeof sum>): string | undefined {
  const { problem, problemIn } = sum(...args);
  if (!problem) return undefined;
  const part = args[0].split("±")[problemIn === "tolerance" ? 1 : 0]!.trim();
  return `${problem.kind} "${part.slice(problem.span.start, problem.span.end)}": ${problem.message}`;
}
