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

/** Cases without wires of unlike length. */
const CHIP = /SMD|_\d{4}|SOD-?\d|SOT-?\d|SMA\b|SMB\b/i;
/** Chips in the cases of transistors have no notch. */
const TRANSISTOR_CASE = /^(?:.*:)?(?:TO|SOT)-?\d/i;

export function polarMark(part: Part): PolarMark | undefined {
  const mark = BY_CLASS[kindOf(part)];
  const footprint = part.line.cells.package?.text ?? "";
  if (mark === "notch" && TRANSISTOR_CASE.test(footprint)) return "print";
  const isChip = CHIP.test(footprint);
  return isChip && (mark === "longLeadAnode" || mark === "longLeadPlus") ? "print" : mark;
}
