/** Threads and screws that a figure of shop work speaks of. */
import { fastenerOf } from "../../model/fasteners.ts";
import type { GuideFigure } from "../../model/figures/figure.ts";
import type { Guide, Step } from "../../model/guide.ts";
import type { Hardware } from "../../model/parts.ts";
import type { Fastener } from "../../trade/fasteners/fastener.ts";
import { type Thread, threadIn } from "../../trade/fasteners/threads.ts";

/** The thread among the subjects of the figure's name: M3 of `hole(M3)`. */
export function namedThread({ figure, parts }: GuideFigure): Thread | undefined {
  for (const [place, { text }] of (figure.name?.subjects ?? []).entries()) {
    const thread = parts[place] ? undefined : threadIn(text);
    if (thread) return thread;
  }
  return undefined;
}

/** A screw of the list with what its words tell. */
export interface Screw {
  readonly hardware: Hardware;
  readonly fastener: Fastener & { readonly thread: Thread };
}

/** The screws that a step's marks use for good. */
export function screwsOfStep(step: Step): readonly Screw[] {
  const fitted = step.marks.filter(({ mark }) => mark.role === "fit");
  const supplies = fitted.flatMap(({ items }) => items.flatMap((item) => item.supplies));
  return screwsAmong(supplies.filter((one) => one.kind === "hardware"));
}

/** The screws of a thread in the parts list. */
export function screwsOfThread(guide: Guide, { name }: Thread): readonly Screw[] {
  return screwsAmong(guide.hardware).filter(({ fastener }) => fastener.thread.name === name);
}

function screwsAmong(hardware: readonly Hardware[]): readonly Screw[] {
  return hardware.flatMap((one) => {
    const fastener = fastenerOf(one);
    const { kind, thread } = fastener ?? {};
    return fastener && kind === "screw" && thread
      ? [{ hardware: one, fastener: { ...fastener, thread } }]
      : [];
  });
}
