/** The finding about a printed mark that does not fit the parts it speaks of. */
import type { GuidePiece } from "../../model/guide.ts";
import { formatQuantity } from "../../quantity/formatQuantity.ts";
import type { Unit } from "../../quantity/value.ts";
import { type Marked, readMark } from "../../trade/marking/readMark.ts";
import type { Finding } from "../check.ts";
import { told, toldAt } from "../values/listed.ts";
import { type CodedPart, linesOf } from "./codedParts.ts";
import type { PrintedMark } from "./printedMarks.ts";

const UNITS: { readonly [kind in Marked]: Unit } = { resistor: "Ω", capacitor: "F", inductor: "H" };

/** Undefined where the mark fits one of the parts, or is no value at all. */
export function judgeMark(
  mark: PrintedMark,
  parts: readonly CodedPart[],
  piece: GuidePiece,
): Finding | undefined {
  const said = parts.map((coded) => ({ coded, amounts: readMark(mark.text, coded.kind) }));
  const readable = said.filter(({ amounts }) => amounts.length > 0);
  if (readable.length === 0) return undefined;
  if (readable.some(({ coded, amounts }) => amounts.some((one) => isSame(one, coded.amount)))) {
    return undefined;
  }
  const { coded, amounts } = readable[0]!;
  const unit = UNITS[coded.kind];
  const meant = [...new Set(amounts.map((amount) => formatQuantity({ amount, unit })))];
  const lines = linesOf(readable.map((one) => one.coded));
  return {
    at: { piece, span: mark },
    message: () =>
      `The mark ${mark.text} means ${meant.join(" or ")}, but the parts list says ${told(lines)}. A builder who goes by the mark fits the wrong part: correct the mark or the list.`,
    related: toldAt(lines),
  };
}

function isSame(a: number, b: number): boolean {
  return Math.abs(a - b) <= 1e-6 * Math.max(a, b);
}
