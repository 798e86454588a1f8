/** How long a screw must be for what it clamps. Lengths in metres. Common practice. */
import { nutHeight } from "./hardware.ts";
import type { Thread } from "./threads.ts";

/** Pitches of thread that stand out of the nut: the first turns of a screw are not full. */
export const OUT_OF_NUT = 2;

/** Threads that must hold in a blind hole, in diameters of the screw, by material. */
const ENGAGEMENT = { steel: 1, brass: 1.5, aluminium: 2 } as const;

export type Material = keyof typeof ENGAGEMENT;
export const MATERIALS = Object.keys(ENGAGEMENT) as readonly Material[];

/** Lengths below the head that screws are sold in, in mm. Source: ISO 4762; the first from ISO 7045. */
const LENGTHS = [
  2, 2.5, 3, 4, 5, 6, 8, 10, 12, 14, 16, 20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70, 80,
];

/** The next length that is sold; undefined above 80 mm. */
export function nextLength(length: number): number | undefined {
  const mm = LENGTHS.find((one) => one >= length * 1000 - 1e-6);
  return mm === undefined ? undefined : mm / 1000;
}

/** The shortest screw that holds a stack (washers counted in) with a nut, two pitches out of it. */
export function lengthWithNut(thread: Thread, stack: number): number {
  return stack + nutHeight(thread) + OUT_OF_NUT * thread.pitch;
}

/** The shortest screw that holds a stack in a tapped hole of that material. */
export function lengthInThread(thread: Thread, stack: number, material: Material): number {
  return stack + ENGAGEMENT[material] * thread.diameter;
}
