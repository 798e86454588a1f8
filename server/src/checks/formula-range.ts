/** A formula of the trade is used outside the range where it holds. */
import { type Check, NO_FINDINGS } from "./check.ts";

export const check: Check = {
  meta: {
    code: "formula-range",
    summary: "A formula is used outside the range where it holds.",
    severity: "warning",
    source: "the source of each formula, on the page of the trade functions",
    tags: ["figures"],
  },
  figure(figure) {
    const warnings = figure.evaluation?.warnings;
    if (!warnings || warnings.length === 0) return NO_FINDINGS;
    return warnings.map(({ span, message }) => ({
      at: figure.at("expression", span),
      message: () => message,
    }));
  },
};
