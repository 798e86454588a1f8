/** How a builder sees which way round a part goes (common practice). */
import { kindOf } from "../../model/partKind.ts";
import type { Part } from "../../model/parts.ts";
import type { PartClass } from "../../trade/partClass.ts";

export type PolarMark = "cathodeRing" | "longLeadPlus" | "longLeadAnode" | "notch" | "print";

const BY_CLASS: { readonly [kind in PartClass]?: PolarMark } = {
  diode: "cathodeRing",
  electrolytic: "longLeadPlus",
  led: "longLeadAnode",
  ic: "notch",
  socket: "notch",
  transistor: "print",
};

/** Parts with wires: only these have a long lead. */
const CHIP = /SMD|_\d{4}|SOD-?\d|SOT-?\d|SMA\b|SMB\b/i;

export function polarMark(part: Part): PolarMark | undefined {
  const mark = BY_CLASS[kindOf(part)];
  const isChip = CHIP.test(part.line.cells.package?.text ?? "");
  return isChip && (mark === "longLeadAnode" || mark === "longLeadPlus") ? "print" : mark;
}
