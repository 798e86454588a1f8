/** An expression uses a name that no figure defines and no part has. */
import type { GuideFigure } from "../model/figures/figure.ts";
import type { FigurePart } from "../model/figures/formula.ts";
import type { Guide } from "../model/guide.ts";
import { ARITHMETIC } from "../quantity/functions.ts";
import type { FigureProblem } from "../quantity/problem.ts";
import { nearestWord } from "../text/nearest.ts";
import { TRADE_FUNCTIONS } from "../trade/functions/all.ts";
import { type Check, type Finding, type Fix, NO_FINDINGS } from "./check.ts";
import { edit, problemsOf } from "./figures/problems.ts";
import { textOfSpan } from "./figures/texts.ts";
import { joinWords } from "./words.ts";

export const check: Check = {
  meta: {
    code: "unknown-name",
    summary: "A figure uses a name that nothing defines.",
    severity: "error",
    source: "common practice",
    tags: ["figures"],
  },
  figure(figure, guide) {
    const problems = problemsOf(figure);
    if (problems.length === 0) return NO_FINDINGS;
    return problems
      .filter(({ problem }) => problem.kind === "name")
      .map(({ part, problem }) => finding(figure, part, problem, guide));
  },
};

function finding(
  figure: GuideFigure,
  part: FigurePart,
  problem: FigureProblem,
  guide: Guide,
): Finding {
  const { span, suggestion } = problem;
  const written = textOfSpan(figure, part, span);
  const write = (text: string) => (): Fix => edit(figure, part, span, text, `Write ${text}`, false);
  return {
    at: figure.at(part, span),
    // What is near to it follows edits elsewhere.
    message: () => (suggestion ? problem.message : message(written, figure, guide)),
    fixes: suggestion
      ? [write(suggestion.text)]
      : [
          () => {
            const [nearest] = near(written, figure, guide);
            return nearest === undefined ? undefined : write(nearest)();
          },
        ],
  };
}

function message(written: string, figure: GuideFigure, guide: Guide): string {
  const names = near(written, figure, guide);
  const hint =
    names.length > 0
      ? ` Did you mean ${joinWords(names, "or")}?`
      : ` Define it: {${written} = …}, or in the front matter under figures.`;
  const what = written.includes("(")
    ? `No figure gives ${written}.`
    : `${written} is no figure, no part of the list and no unit.`;
  return `${what}${hint}`;
}

/** The nearest name that another figure defines, the nearest designators, the nearest function. */
function near(written: string, { figure }: GuideFigure, guide: Guide): readonly string[] {
  const others = [...guide.figures.names()].filter((one) => one !== figure.name?.text);
  const name = nearestWord(written, others);
  const symbol = written.split("(")[0]!.trim();
  const isCall = written.includes("(");
  const functions = [...ARITHMETIC.keys(), ...TRADE_FUNCTIONS.keys()];
  const called = isCall ? nearestWord(symbol, functions) : undefined;
  const found = [
    ...(name === undefined ? [] : [name]),
    ...(isCall ? [] : guide.nearest(symbol)),
    ...(called === undefined ? [] : [written.replace(symbol, called)]),
  ];
  return [...new Set(found)].filter((one) => one !== written).slice(0, 3);
}
