/** A lead is bent too tightly, or too close to the body of its part. */
import type { GuideFigure } from "../model/figures/figure.ts";
import type { Part } from "../model/parts.ts";
import { hasUnit } from "../quantity/evaluation/value.ts";
import { printAmount } from "../quantity/printing.ts";
import { bendDistance, bendRadius, glassBendDistance } from "../trade/leads/bend.ts";
import { isGlassDiode, leadDiameter } from "../trade/leads/leadDiameter.ts";
import { type Check, type Finding, NO_FINDINGS } from "./check.ts";
import { shown } from "./figures/problems.ts";
import { packageText } from "./mechanics/clamping.ts";
import { partName } from "./words.ts";

export const check: Check = {
  meta: {
    code: "lead-bend",
    summary: "A lead is bent too tightly or too close to its part.",
    severity: "warning",
    source: "NASA and IPC workmanship tables as taught in soldering courses",
    tags: ["figures"],
  },
  figure(figure) {
    const symbol = figure.figure.name?.symbol;
    const value = figure.evaluation?.value;
    if ((symbol !== "bend" && symbol !== "radius") || !value || !hasUnit(value, "m")) {
      return NO_FINDINGS;
    }
    return [...new Set(figure.parts)].flatMap(
      (part) => (part && judge(figure, part, symbol, value.min, shown(value))) ?? [],
    );
  },
};

function judge(
  figure: GuideFigure,
  part: Part,
  symbol: "bend" | "radius",
  least: number,
  written: string,
): Finding | undefined {
  const text = packageText(part);
  const diameter = leadDiameter(text);
  if (diameter === undefined) return undefined;
  const isGlass = symbol === "bend" && isGlassDiode(text);
  const rule =
    symbol === "radius"
      ? bendRadius(diameter)
      : isGlass
        ? glassBendDistance(diameter)
        : bendDistance(diameter);
  if (least >= rule - 1e-9) return undefined;
  return {
    at: figure.at("expression"),
    message: () => {
      const lead = `${partName(part)}, whose leads are ${mm(diameter)} thick`;
      if (symbol === "radius") {
        return `A bend of ${written} radius is too tight for ${lead}: the metal cracks. Bend it round ${mm(rule)} at least.`;
      }
      const harm = isGlass ? "the glass cracks" : "the pull loosens the lead in the body";
      return `A bend ${written} from the body is too close for ${lead}: ${harm}. Leave ${mm(rule)} at least.`;
    },
  };
}

function mm(length: number): string {
  return printAmount(length, "m", 3).replace("\u00a0", " ");
}
