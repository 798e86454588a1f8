/** A formula of the trade is used outside the range where it holds. */
import type { Check } from "./check.ts";

export const check: Check = {
  meta: {
    code: "formula-range",
    summary: "A formula is used outside the range where it holds.",
    severity: "warning",
    source: "the source of each formula, on the page of the trade functions",
    tags: ["figures"],
  },
  *figure(figure) {
    for (const { span, message } of figure.evaluation?.warnings ?? []) {
      yield { at: figure.at("expression", span), message: () => message };
    }
  },
};
