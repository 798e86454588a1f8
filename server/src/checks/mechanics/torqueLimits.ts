/** What torque the things stand that a torque figure speaks of. Torques in N·m. */
import type { GuideFigure } from "../../model/figures/figure.ts";
import type { Guide } from "../../model/guide.ts";
import { printAmount } from "../../quantity/printing.ts";
import { packageTorque } from "../../trade/fasteners/packageTorque.ts";
import { tighteningTorque } from "../../trade/fasteners/torque.ts";
import { packageText } from "./clamping.ts";
import { namedThread, type Screw, screwsOfStep, screwsOfThread } from "./threads.ts";

export interface TorqueLimit {
  readonly most: number;
  /** `a TO-220`, `M3x10 of class 4.8`. */
  readonly of: string;
  readonly source: string;
  /** What happens above it. */
  readonly harm: string;
  readonly advice: string;
}

/** The lowest limit of packages and screws; undefined where none is known. */
export function lowestLimit(figure: GuideFigure, guide: Guide): TorqueLimit | undefined {
  const limits = [...packageLimits(figure), ...screwLimits(figure, guide)];
  return limits.sort((a, b) => a.most - b.most)[0];
}

function* packageLimits({ parts }: GuideFigure): Generator<TorqueLimit> {
  for (const part of parts) {
    const torque = part && packageTorque(packageText(part));
    if (!torque) continue;
    yield {
      most: torque.most,
      of: `a ${torque.name}`,
      source: torque.source,
      harm: "the tab bends or the chip cracks",
      advice: `Makers recommend ${inWords(torque.recommended)}; the part's own data sheet comes first.`,
    };
  }
}

/** Screws of the figure's step; of a named thread those of the step, else those of the list. */
function* screwLimits(figure: GuideFigure, guide: Guide): Generator<TorqueLimit> {
  for (const { hardware, fastener } of screwsOf(figure, guide)) {
    const { thread, soft } = fastener;
    if (soft) continue;
    const propertyClass = fastener.propertyClass ?? USUAL_CLASS[fastener.head];
    const most = tighteningTorque(thread, propertyClass, 1);
    if (Number.isNaN(most)) continue;
    const assumed = fastener.propertyClass ? "" : " (the list gives none)";
    yield {
      most,
      of: `${hardware.name} of class ${propertyClass}${assumed}`,
      source: "proof load, ISO 898-1, dry thread",
      harm: "the screw stretches or its thread strips",
      advice: `Up to ${inWords(tighteningTorque(thread, propertyClass))} is usual for a joint that is opened again.`,
    };
  }
}

/** Heads tell the class where the list does not: ISO 7045 is 4.8, ISO 4762 is 8.8. */
const USUAL_CLASS = { "hexagon socket": "8.8", other: "4.8" } as const;

function screwsOf(figure: GuideFigure, guide: Guide): readonly Screw[] {
  const here = figure.step ? screwsOfStep(figure.step) : [];
  const thread = namedThread(figure);
  if (!thread) return here;
  const ofThread = here.filter(({ fastener }) => fastener.thread.name === thread.name);
  return ofThread.length > 0 ? ofThread : screwsOfThread(guide, thread);
}

function inWords(torque: number): string {
  return printAmount(torque, "N·m", 2).replace("\u00a0", " ");
}
