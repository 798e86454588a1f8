/** Units that do not agree: in an expression, or between a figure and what it is held against. */
import type { GuideFigure } from "../model/figures/figure.ts";
import { type FigureValue, hasUnit, sameKind } from "../quantity/evaluation/value.ts";
import { FIGURE_SYMBOLS } from "../trade/figureNames.ts";
import type { Check, Finding } from "./check.ts";
import { findingsOf, nameOf } from "./figures/problems.ts";

export const check: Check = {
  meta: {
    code: "unit-clash",
    summary: "The units in a figure do not agree.",
    severity: "error",
    source: "SI brochure; NIST SP 811",
    tags: ["figures"],
  },
  figure(figure) {
    const problems = findingsOf(figure, "unit");
    const value = figure.evaluation?.value;
    if (!value) return problems;
    const clash = againstName(figure, value) ?? againstDefinition(figure, value);
    const stated = againstStated(figure, value);
    if (!clash && !stated) return problems;
    return [...problems, clash, stated].filter((finding) => finding !== undefined);
  },
};

/** `P(R50)` is a power, a rail of `supply` a voltage. */
function againstName(figure: GuideFigure, value: FigureValue): Finding | undefined {
  const { name } = figure.figure;
  if (figure.isRail && !hasUnit(value, "V")) {
    return {
      at: figure.at("expression"),
      message: () =>
        `The rails in \`supply\` are voltages, and this is ${inUnit(value)}. Other figures belong under \`figures\`.`,
    };
  }
  const symbol = name && name.subjects.length > 0 ? FIGURE_SYMBOLS.get(name.symbol) : undefined;
  if (!symbol || hasUnit(value, symbol.unit)) return undefined;
  const wanted = symbol.unit === "1" ? "a plain number" : `in ${symbol.unit}`;
  return {
    at: figure.at("expression"),
    message: () =>
      `${nameOf(figure)} is ${symbol.meaning}, so it is ${wanted}; this is ${inUnit(value)}. Correct the expression, or give it another name.`,
  };
}

function againstDefinition(figure: GuideFigure, value: FigureValue): Finding | undefined {
  const { definition, listed } = figure;
  if (listed) {
    const unit = listed.line.value!.unit;
    if (hasUnit(value, unit) || figure.role !== "listed") return undefined;
    return {
      at: figure.at("expression"),
      message: () =>
        `The list gives ${listed.name} in ${unit}, and this is ${inUnit(value)}. Correct the one that is wrong.`,
    };
  }
  const defined = definition === figure ? undefined : definition?.evaluation?.value;
  if (!defined || sameKind(defined, value)) return undefined;
  return {
    at: figure.at("expression"),
    message: () =>
      `${nameOf(figure)} is ${inUnit(defined)} where it is defined, and ${inUnit(value)} here.`,
    related: [{ at: definition!.at(), message: () => `${nameOf(definition!)} is defined here.` }],
  };
}

function againstStated(figure: GuideFigure, value: FigureValue): Finding | undefined {
  const stated = figure.stated?.value;
  if (!stated || sameKind(stated, value)) return undefined;
  return {
    at: figure.at("stated"),
    message: () =>
      `The result is ${inUnit(value)}, but the stated value ${inUnit(stated)}. Correct the unit.`,
  };
}

function inUnit({ unit }: FigureValue): string {
  return unit === "1" ? "a plain number" : `in ${unit}`;
}
