/** How long a screw must be for what it clamps. Lengths in metres. Common practice. */
import { nutHeight } from "./hardware.ts";
import type { Thread } from "./threads.ts";

/** Pitches of thread that stand out of the nut: the first turns of a screw are not full. */
const OUT_OF_NUT = 2;

/** Threads that must hold in a blind hole, in diameters of the screw, by material. */
const ENGAGEMENT = { steel: 1, brass: 1.5, aluminium: 2 } as const;

export type Material = keyof typeof ENGAGEMENT;
export const MATERIALS: readonly string[] = Object.keys(ENGAGEMENT);

/** The shortest screw that holds a stack (washers counted in) with a nut, two pitches out of it. */
export function lengthWithNut(thread: Thread, stack: number): number {
  return stack + nutHeight(thread) + OUT_OF_NUT * thread.pitch;
}

/** The shortest screw that holds a stack in a tapped hole of that material. */
export function lengthInThread(thread: Thread, stack: number, material: Material): number {
  return stack + ENGAGEMENT[material] * thread.diameter;
}
