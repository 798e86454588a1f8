/** What a shop wants to know of a figure: the clamp force of a torque, the class of a hole. */

import { namedThread, type Screw, screwsOfStep } from "../../checks/mechanics/threads.ts";
import { lowestLimit } from "../../checks/mechanics/torqueLimits.ts";
import type { GuideFigure } from "../../model/figures/figure.ts";
import type { Guide } from "../../model/guide.ts";
import { hasUnit } from "../../quantity/evaluation/value.ts";
import { clearanceHole, FITS, holeClass, holeStandard } from "../../trade/fasteners/holes.ts";
import { proofLoad } from "../../trade/fasteners/strength.ts";
import type { Thread } from "../../trade/fasteners/threads.ts";
import { clampForce } from "../../trade/fasteners/torque.ts";
import { shown } from "../part/shown.ts";

/** One paragraph, or empty for figures of other kinds. */
export function shopNote(figure: GuideFigure, guide: Guide): string {
  const value = figure.evaluation?.value;
  if (!value) return "";
  if (value.unit === "N·m") return torqueNote(figure, value.nominal, guide);
  const thread = namedThread(figure);
  const isHole = figure.figure.name?.symbol === "hole" && thread && hasUnit(value, "m");
  return isHole ? holeNote(thread, value.nominal) : "";
}

function torqueNote(figure: GuideFigure, torque: number, guide: Guide): string {
  const notes = clamped(figure, torque);
  const limit = lowestLimit(figure, guide);
  if (limit) {
    const share = Math.round((100 * torque) / limit.most);
    notes.push(
      `${share} % of what ${limit.of} stands, ${shown(limit.most, "N·m")} (${limit.source}).`,
    );
  }
  return notes.join(" ");
}

/** The force under the head of each kind of screw, for dry steel. */
function clamped(figure: GuideFigure, torque: number): string[] {
  const thread = namedThread(figure);
  const screws = figure.step ? screwsOfStep(figure.step) : [];
  if (screws.length === 0) return thread ? [force(thread, torque, thread.name)] : [];
  return screws.map(({ hardware, fastener }: Screw) => {
    const { propertyClass } = fastener;
    const load = propertyClass ? proofLoad(fastener.thread, propertyClass) : Number.NaN;
    const share = Math.round((100 * clampForce(torque, fastener.thread)) / load);
    const ofLoad = Number.isNaN(share)
      ? ""
      : ` That is ${share} % of its proof load (class ${propertyClass}).`;
    return force(fastener.thread, torque, hardware.name) + ofLoad;
  });
}

function force(thread: Thread, torque: number, name: string): string {
  return `${name} clamps with about ${shown(clampForce(torque, thread), "N")}, dry.`;
}

function holeNote(thread: Thread, hole: number): string {
  const classes = FITS.map((fit) => `${fit} ${shown(clearanceHole(thread, fit), "m")}`);
  return `${holeStandard(thread)} for ${thread.name}: ${holeClass(thread, hole)} (${classes.join(", ")}).`;
}
