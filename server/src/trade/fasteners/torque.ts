/** Torque and clamp force of a screw: T = K d F. Torques in N·m, forces in N. */
import { proofLoad } from "./strength.ts";
import type { Thread } from "./threads.ts";

/**
 * Nut factor K of plain dry steel; about 0.15 when lubricated and 0.3 when rusty. Source: Shigley,
 * Mechanical Engineering Design; Machinery's Handbook.
 */
export const DRY = 0.2;

/** Share of the proof load for joints that are opened again. Source: Shigley. */
export const REUSABLE = 0.75;

/** Clamp force in N that a torque in N·m gives; scatters by ±30 % with the friction. */
export function clampForce(torque: number, thread: Thread, nutFactor = DRY): number {
  return nutFactor > 0 ? torque / (nutFactor * thread.diameter) : Number.NaN;
}

/** Torque in N·m that gives a clamp force in N. */
export function torqueFor(force: number, thread: Thread, nutFactor = DRY): number {
  return nutFactor > 0 ? nutFactor * thread.diameter * force : Number.NaN;
}

/** Torque in N·m that loads a screw of that property class with a share of its proof load. */
export function tighteningTorque(
  thread: Thread,
  propertyClass: string,
  share = REUSABLE,
  nutFactor = DRY,
): number {
  return torqueFor(share * proofLoad(thread, propertyClass), thread, nutFactor);
}

/** The share of the proof load that a torque in N·m puts on the screw: 1 is all of it. */
export function shareOfProof(
  torque: number,
  thread: Thread,
  propertyClass: string,
  nutFactor = DRY,
): number {
  return clampForce(torque, thread, nutFactor) / proofLoad(thread, propertyClass);
}
