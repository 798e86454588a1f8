/** What the figure checks share: the problems of a figure, its names, and edits to its text. */
import type { GuideFigure } from "../../model/figures/figure.ts";
import { type FigurePart, textOfPart } from "../../model/figures/formula.ts";
import type { FigureValue } from "../../quantity/evaluation/value.ts";
import { printValue } from "../../quantity/printRange.ts";
import type { FigureProblem } from "../../quantity/problem.ts";
import type { Span } from "../../text/span.ts";
import { type Finding, type Fix, NO_FINDINGS } from "../check.ts";
import { placeOf } from "../verdict.ts";

export interface PlacedProblem {
  readonly part: FigurePart;
  readonly problem: FigureProblem;
}

const NONE: readonly PlacedProblem[] = [];

/** Why the figure, or the value it states, cannot be read or computed. */
export function problemsOf(figure: GuideFigure): readonly PlacedProblem[] {
  const { evaluation, stated } = figure;
  if (!evaluation?.problem && !stated?.problem) return NONE;
  const found: PlacedProblem[] = [];
  if (evaluation?.problem) {
    found.push({ part: evaluation.problemIn ?? "expression", problem: evaluation.problem });
  }
  if (stated?.problem) found.push({ part: "stated", problem: stated.problem });
  return found;
}

/** Findings for the problems of one kind. */
export function findingsOf(figure: GuideFigure, kind: FigureProblem["kind"]): readonly Finding[] {
  const problems = problemsOf(figure);
  if (problems.length === 0) return NO_FINDINGS;
  const findings: Finding[] = [];
  for (const { part, problem } of problems) {
    if (problem.kind !== kind) continue;
    const { span, message, suggestion } = problem;
    findings.push({
      at: figure.at(part, span),
      message: () => message,
      fixes: suggestion
        ? [
            () =>
              edit(
                figure,
                part,
                suggestion.span,
                suggestion.text,
                suggestion.title,
                suggestion.safe === true,
              ),
          ]
        : [],
    });
  }
  return findings;
}

/** A fix that replaces a stretch of one text of a figure. */
export function edit(
  figure: GuideFigure,
  part: FigurePart,
  span: Span,
  text: string,
  title: string,
  safe: boolean,
): Fix {
  const place = placeOf(figure.at(part, span));
  return { title, safe, edits: [{ uri: place.uri, edits: [{ span: place.span, text }] }] };
}

/** The figure's name as written, or its expression. */
export function nameOf({ figure }: GuideFigure): string {
  return figure.name?.text ?? textOfPart(figure, "expression")?.text ?? "";
}

/** A value in a sentence: with plain spaces, which wrap. */
export function shown(value: FigureValue): string {
  return printValue(value).replaceAll("\u00a0", " ");
}
