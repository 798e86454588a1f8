/** What a reading expects contradicts what is computed for the same name. */
import { type FigureValue, sameKind } from "../quantity/evaluation/value.ts";
import { printLimits } from "../quantity/printRange.ts";
import type { Reading } from "../syntax/dialect.ts";
import { type Check, NO_FINDINGS } from "./check.ts";
import { nameOf, shown } from "./figures/problems.ts";

export const check: Check = {
  meta: {
    code: "reading-outside",
    summary: "An expected reading contradicts what is computed.",
    severity: "warning",
    source: "worst-case analysis; common practice",
    tags: ["figures"],
  },
  figure(figure) {
    const { reading } = figure.figure;
    if (!reading) return NO_FINDINGS;
    const { definition } = figure;
    const expected = figure.evaluation?.value;
    const computed = definition === figure ? undefined : definition?.evaluation?.value;
    if (!expected || !computed || definition!.figure.reading) return NO_FINDINGS;
    if (!sameKind(expected, computed)) return NO_FINDINGS;
    const { low, high } = limitsOf(reading, expected);
    const apart = computed.max < low || computed.min > high;
    if (!apart && computed.nominal >= low && computed.nominal <= high) return NO_FINDINGS;
    const name = nameOf(figure);
    const finding = {
      at: figure.at(),
      message: () => {
        const range = printLimits(computed).replaceAll("\u00a0", " ");
        return apart
          ? `No kit that is built right gives this reading: ${name} is computed to lie within ${range}. Correct the limits or the expression.`
          : `A kit with parts of nominal value fails this reading: ${name} is computed to be ${shown(computed)}, and with tolerances within ${range}. Correct the limits or the expression.`;
      },
      related: [
        { at: definition!.at(), message: () => `${nameOf(definition!)} is computed here.` },
      ],
    };
    return [finding];
  },
};

/** What the builder may read, a hair more for rounding. */
function limitsOf(reading: Reading, { min, max, nominal }: FigureValue) {
  const hair = 1e-9 * Math.max(Math.abs(min), Math.abs(max));
  switch (reading.limit) {
    case "below":
      return { low: -Infinity, high: nominal + hair };
    case "above":
      return { low: nominal - hair, high: Infinity };
    default:
      return { low: min - hair, high: max + hair };
  }
}
