/**
 * Proves a packing list: what it holds of each line is what the parts list supplies, and enough for the
 * guide. The sums are made of the parts list's own cells, not of what the packing list was made from.
 */
import { tally } from "../../checks/tally.ts";
import { lengthText, listNames } from "../../checks/words.ts";
import type { GuideState } from "../../model/guideState.ts";
import type { ListLine } from "../../model/list/partsList.ts";
import { placesOf, suppliedPieces } from "../../model/list/supplied.ts";
import type { PackedLine } from "./packedLines.ts";
import type { PackingList, PackRow } from "./packingList.ts";

/** A sentence for each line whose amounts disagree. */
export function packingFaults(packing: PackingList, guide: GuideState): readonly string[] {
  const rows = new Map<PackedLine["line"], PackRow[]>();
  for (const row of packing.groups.flatMap((group) => group.rows)) {
    const { line } = row.packed;
    rows.set(line, [...(rows.get(line) ?? []), row]);
  }
  const apart = new Set([...packing.made, ...packing.unfitted].map(({ line }) => line));
  return packing.lines.flatMap((packed) => {
    const own = rows.get(packed.line) ?? [];
    if (apart.has(packed.line))
      return own.length > 0 ? [`${named(packed)} is packed and left out. ${REPORT}`] : [];
    // What falls short is packed as the steps want it: that would be told twice.
    const short = needFault(packed, guide);
    return short.length > 0 ? short : amountFault(packed, own);
  });
}

const REPORT = "Please report this: it is no fault of the guide.";

/** What is packed against what the list supplies. */
function amountFault(packed: PackedLine, rows: readonly PackRow[]): string[] {
  const { line, hardware } = packed;
  if (rows.length === 0) return [`${named(packed)} is missing from the packing list. ${REPORT}`];
  const metres = rows.reduce((sum, row) => sum + (row.metres ?? 0), 0);
  if (line.metres !== undefined) {
    return Math.abs(metres - line.metres) < 1e-9 ? [] : [differs(packed, lengthText(metres))];
  }
  const packedPieces = rows.reduce((sum, row) => sum + (row.pieces ?? 0), 0);
  const expected = hardware ? line.quantity : expectedOf(packed);
  if (expected === undefined || packedPieces === expected) return [];
  return [differs(packed, `${packedPieces}`)];
}

/** A list counts the spares in, or leaves them out where quantity and designators agree. */
function expectedOf({ lines }: PackedLine): number {
  return lines.reduce((sum, line) => {
    const { quantity, spare = 0 } = line;
    const places = placesOf(line);
    return sum + (quantity === undefined || quantity === places ? places + spare : quantity);
  }, 0);
}

/** What the guide needs against what the list supplies. */
function needFault(packed: PackedLine, guide: GuideState): string[] {
  const { line, lines, hardware, pieces } = packed;
  if (!hardware) return pieces === undefined ? [] : lines.flatMap(placesFault);
  const uses = guide.uses(hardware);
  if (line.metres !== undefined) {
    const needed = uses.reduce(
      (sum, { role, metres }) => sum + (role === "fit" ? (metres ?? 0) : 0),
      0,
    );
    return needed <= line.metres * (1 + 1e-9) ? [] : [short(packed, lengthText(needed))];
  }
  const { most } = tally(uses, Infinity);
  return pieces === undefined || most <= pieces ? [] : [short(packed, `${most}`)];
}

/** Places of a line's designators against the pieces that the line supplies for them. */
function placesFault(line: ListLine): string[] {
  const places = placesOf(line);
  const { pieces } = suppliedPieces(line, places);
  if (places <= pieces) return [];
  return [
    `${capital(line.place)} of the parts list supplies ${pieces} of ${listNames(line.designators)}, which are ${places} parts. Correct the quantity or the designators; the packer would fall short.`,
  ];
}

function differs(packed: PackedLine, amount: string): string {
  return `The packing list holds ${amount} of ${named(packed)}, but the parts list supplies ${supplied(packed)}. ${REPORT}`;
}

function short(packed: PackedLine, needed: string): string {
  return `The guide uses ${needed} of ${named(packed)}, but ${packed.line.place} of the parts list supplies ${supplied(packed)}. The packer would fall short: correct a step or the list.`;
}

function supplied({ line, pieces }: PackedLine): string {
  return line.metres === undefined ? `${pieces}` : lengthText(line.metres);
}

function named({ hardware, lines }: PackedLine): string {
  return hardware?.name ?? listNames(lines.flatMap(({ designators }) => designators));
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
