/** A figure depends on itself, directly or through others. */
import type { GuideFigure } from "../model/figures/figure.ts";
import type { Anchor, Guide } from "../model/guide.ts";
import { type Check, NO_FINDINGS } from "./check.ts";
import { nameOf } from "./figures/problems.ts";

export const check: Check = {
  meta: {
    code: "circular-figure",
    summary: "A figure depends on itself.",
    severity: "error",
    source: "common practice",
    tags: ["figures"],
  },
  figure(figure, guide) {
    if (figure.evaluation?.problem?.kind !== "circle") return NO_FINDINGS;
    const way = guide.figures.circle(figure);
    const others = way.slice(1, -1);
    const finding = {
      at: leadsOn(figure, way[1], guide),
      message: () =>
        `${nameOf(figure)} depends on itself: ${way.map(nameOf).join(" → ")}. So none of these has a value. Give one of them without the others.`,
      related: others.map((one, i) => ({
        at: leadsOn(one, way[i + 2], guide),
        message: () => `${nameOf(one)} uses ${nameOf(way[i + 2]!)} here.`,
      })),
    };
    return [finding];
  },
};

/** Where the figure uses the next one. */
function leadsOn(figure: GuideFigure, next: GuideFigure | undefined, guide: Guide): Anchor {
  for (const { part, use } of figure.formula?.names ?? []) {
    const meaning = guide.figures.meaning(use, figure.board);
    if (meaning.kind === "figure" && meaning.figure.key === next?.key) {
      return figure.at(part, use.span);
    }
  }
  return figure.at("expression");
}
