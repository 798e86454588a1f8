/** A torque is above what the package or the screw stands. */
import { printAmount } from "../quantity/printing.ts";
import { type Check, NO_FINDINGS } from "./check.ts";
import { shown } from "./figures/problems.ts";
import { lowestLimit } from "./mechanics/torqueLimits.ts";

export const check: Check = {
  meta: {
    code: "torque-limit",
    summary: "A torque is above what the package or the screw stands.",
    severity: "warning",
    source: "Mounting instructions of semiconductor makers; ISO 898-1",
    tags: ["figures"],
  },
  figure(figure, guide) {
    const value = figure.evaluation?.value;
    const limit = value?.unit === "N·m" ? lowestLimit(figure, guide) : undefined;
    if (!value || !limit || value.max <= limit.most) return NO_FINDINGS;
    const finding = {
      at: figure.at("expression"),
      message: () => {
        const most = printAmount(limit.most, "N·m", 3).replace("\u00a0", " ");
        const reach =
          value.nominal > limit.most
            ? `${shown(value)} is`
            : `${shown(value)} may come to ${printAmount(value.max, "N·m", 3).replace("\u00a0", " ")}, which is`;
        return `${reach} above what ${limit.of} stands, ${most} (${limit.source}): ${limit.harm}. ${limit.advice}`;
      },
    };
    return [finding];
  },
};
