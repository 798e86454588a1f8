/** A figure loads a part above its rating, or close to it. */
import type { GuideFigure } from "../model/figures/figure.ts";
import type { DeratingSettings, Guide } from "../model/guide.ts";
import type { Part } from "../model/parts.ts";
import { hasUnit } from "../quantity/evaluation/value.ts";
import { printAmount } from "../quantity/printing.ts";
import { type Check, type Finding, NO_FINDINGS } from "./check.ts";
import { isLoad, LOADS, type Load, type Rating, ratingOf } from "./electric/ratings.ts";
import { nameOf } from "./figures/problems.ts";
import { cellAt } from "./places.ts";
import { partName } from "./words.ts";

export const check: Check = {
  meta: {
    code: "overload",
    summary: "A part is loaded above its rating, or close to it.",
    severity: "error",
    source: "Makers' ratings; common practice for derating",
    tags: ["figures"],
  },
  figure(figure, guide) {
    const symbol = figure.figure.name?.symbol;
    const value = figure.evaluation?.value;
    if (!symbol || !value || !isLoad(symbol) || !hasUnit(value, LOADS[symbol])) {
      return NO_FINDINGS;
    }
    if (figure.figure.reading?.limit === "above") return NO_FINDINGS;
    const load = Math.max(Math.abs(value.min), Math.abs(value.max));
    let findings = NO_FINDINGS;
    for (const part of new Set(figure.parts)) {
      const rating = part && ratingOf(part, symbol);
      const finding = rating && judge(figure, part, symbol, load, rating, guide);
      if (finding) findings = [...findings, finding];
    }
    return findings;
  },
};

function judge(
  figure: GuideFigure,
  part: Part,
  load: Load,
  amount: number,
  rating: Rating,
  guide: Guide,
): Finding | undefined {
  const allowed = rating.share ? shareOf(rating.share, guide) : 100;
  const percent = (100 * amount) / rating.most;
  // A hair for rounding.
  if (percent <= Math.min(allowed, 100) * (1 + 1e-9)) return undefined;
  const isOver = percent > 100 * (1 + 1e-9);
  const harm = load === "V" ? "ages early" : "runs hot and ages early";
  return {
    at: figure.at(),
    ...(!isOver && { severity: "warning" as const }),
    message: () => {
      const worst = `${nameOf(figure)} may come to ${inWords(amount, load)}`;
      const most = `${inWords(rating.most, load)}, ${rating.from}`;
      return isOver
        ? `${worst}, but ${partName(part)} stands ${most}. It fails sooner or later, or at once: take a stronger part, or lower the load.`
        : `${worst}, ${Math.round(percent)} % of what ${partName(part)} stands (${most}). Above ${allowed} % a part ${harm}: take a stronger one, or lower the load.`;
    },
    related: [
      {
        at: cellAt(part.list, part.line, "power", "voltage", "current", "description", "value"),
        message: () => `${partName(part)} is listed here.`,
      },
    ],
  };
}

/** Per cent: the guide's own share, else that of the settings. */
function shareOf(rated: keyof DeratingSettings, { frontMatter, settings }: Guide): number {
  const own = frontMatter.derating.find(({ name }) => name === rated);
  return own?.value ?? settings.derating[rated];
}

function inWords(amount: number, load: Load): string {
  return printAmount(amount, LOADS[load], 3).replace("\u00a0", " ");
}
