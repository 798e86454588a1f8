/**
 * Points out `*` that a plain Markdown renderer takes for emphasis: `{2*V*I}` would lose both stars. With
 * spaces round it a star is text to every renderer.
 */
import type { Event } from "micromark-util-types";
import type { Figure, StatedText, SyntaxProblem } from "../dialect.ts";

/** A star with no space on one side at least, which may open or close emphasis. */
const STAR = /\*(?=\S)|(?<=\S)\*/g;

/** Adds a problem to each figure of a paragraph with tight stars, where two of them could pair up. */
export function pointOutStars(events: Event[]): Event[] {
  const figures = events.flatMap(([kind, token]) =>
    kind === "enter" && token._figure && tightStars(token._figure) > 0 ? [token] : [],
  );
  const stars = figures.reduce((sum, { _figure }) => sum + tightStars(_figure!), 0);
  if (stars < 2) return events;
  for (const token of figures) {
    const { _figure: figure } = token;
    if (figure) token._figure = { ...figure, problems: [starProblem(figure.expression!)] };
  }
  return events;
}

function tightStars({ expression }: Figure): number {
  return expression?.text.match(STAR)?.length ?? 0;
}

function starProblem({ text, span }: StatedText): SyntaxProblem {
  const spaced = text.replace(/\s*\*\s*/g, " * ");
  return {
    span,
    about: "figure",
    message:
      "A plain Markdown renderer takes these * for emphasis and drops them. Put spaces round each *.",
    suggestion: { title: `Write ${spaced}`, span, text: spaced },
  };
}
