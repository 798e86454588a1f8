/** A name is defined by two expressions. */
import { type Check, type Fix, NO_FINDINGS } from "./check.ts";
import { nameOf } from "./figures/problems.ts";
import { placeOf } from "./verdict.ts";

export const check: Check = {
  meta: {
    code: "duplicate-figure",
    summary: "A name is defined twice.",
    severity: "error",
    source: "common practice",
    tags: ["figures"],
  },
  figure(figure) {
    const { definition } = figure;
    if (figure.role !== "second" || !definition) return NO_FINDINGS;
    const name = nameOf(figure);
    const finding = {
      at: figure.at(),
      message: () =>
        `${name} is defined elsewhere already, and that definition counts. Recall it by {${name}}, or give this figure a name of its own.`,
      related: [{ at: definition.at(), message: () => `${name} is defined here.` }],
      fixes: figure.piece
        ? [
            (): Fix => {
              const { uri, span } = placeOf(figure.at());
              const edits = [{ span, text: `{${name}}` }];
              return { title: `Write {${name}}`, safe: false, edits: [{ uri, edits }] };
            },
          ]
        : [],
    };
    return [finding];
  },
};
