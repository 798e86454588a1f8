/** A reading says what to expect, but not how far it may be off. */
import { type Check, NO_FINDINGS } from "./check.ts";

export const check: Check = {
  meta: {
    code: "reading-tolerance",
    summary: "A reading has no tolerance.",
    severity: "warning",
    source: "common practice",
    tags: ["figures", "form"],
  },
  figure(figure) {
    const { reading } = figure.figure;
    if (reading?.limit !== "value" || reading.tolerance) return NO_FINDINGS;
    const finding = {
      at: figure.at("expression"),
      message: () =>
        "This reading has no tolerance, so the builder cannot tell good from bad. Write ± and how far it may be off, or the two ends with … between them.",
    };
    return [finding];
  },
};
