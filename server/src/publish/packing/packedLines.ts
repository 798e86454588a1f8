/** The lines of the parts list as a packer needs them: what of each lies in the box, and what does not. */

import { tally } from "../../checks/tally.ts";
import type { GuideState } from "../../model/guideState.ts";
import type { ListLine, PartsList } from "../../model/list/partsList.ts";
import { placesOf, suppliedPieces } from "../../model/list/supplied.ts";
import { kindOfLine } from "../../model/partKind.ts";
import type { Hardware, Part } from "../../model/parts.ts";
import { isMadeOfOthers, type Making } from "./making.ts";

/** A line of a parts list, or several of one kind of part (`joinLines`). */
export interface PackedLine {
  readonly list: PartsList;
  /** The first of them. */
  readonly line: ListLine;
  readonly lines: readonly ListLine[];
  /** Set for a line without designators. */
  readonly hardware: Hardware | undefined;
  /** Parts with a designator, chips that share one with their socket among them. */
  readonly parts: readonly Part[];
  /**
   * `packed`: it lies in the box. `made`: the builder makes it of what other lines supply.
   * `unfitted`: the list says that its place stays empty, so it is not in the box.
   */
  readonly status: "packed" | "made" | "unfitted";
  /** Pieces in the kit, spares among them; undefined for a length, or where the list says none. */
  readonly pieces: number | undefined;
  /** Of them the spare ones. */
  readonly spare: number;
  /** Length in the kit. */
  readonly metres: number | undefined;
  /** Pieces beyond places and spares: the lot that matched sets are picked from. */
  readonly surplus: number;
}

export function packedLines(guide: GuideState, making: Making): readonly PackedLine[] {
  const hardware = new Map(guide.hardware.map((one) => [one.line, one]));
  const sharing = new Map<ListLine, Part[]>();
  for (const part of guide.parts) {
    if (!part.socketLine) continue;
    sharing.set(part.socketLine, [...(sharing.get(part.socketLine) ?? []), part]);
  }
  return guide.lists.flatMap((list) =>
    list.lines.map((line): PackedLine => {
      const own = hardware.get(line);
      const parts = [...guide.partsOf(line), ...(sharing.get(line) ?? [])];
      return {
        list,
        line,
        lines: [line],
        hardware: own,
        parts,
        ...amountOf(line, own, guide),
        status: status(parts),
      };

      function status(of: readonly Part[]): PackedLine["status"] {
        if (!line.fitted) return "unfitted";
        return of.length > 0 && of.every((part) => isMadeOfOthers(part, making))
          ? "made"
          : "packed";
      }
    }),
  );
}

type Amount = Pick<PackedLine, "pieces" | "spare" | "metres" | "surplus">;

function amountOf(line: ListLine, hardware: Hardware | undefined, guide: GuideState): Amount {
  if (line.metres !== undefined) {
    return { pieces: undefined, spare: 0, metres: line.metres, surplus: 0 };
  }
  if (hardware) {
    // A list that states no quantity leaves it to what the steps use.
    const pieces = hardware.supplied ?? (tally(guide.uses(hardware), Infinity).most || undefined);
    return { pieces, spare: hardware.spare, metres: undefined, surplus: 0 };
  }
  const places = placesOf(line);
  const { pieces, spare } = suppliedPieces(line, places);
  return { pieces, spare, metres: undefined, surplus: Math.max(0, pieces - places - spare) };
}

/** Kinds under which packers find parts. */
export const PACK_KINDS = [
  "resistors",
  "capacitors",
  "coils",
  "semiconductors",
  "electrical",
  "hardware",
  "wire",
  "other",
] as const;
export type PackKind = (typeof PACK_KINDS)[number];

export function packKind({ line, parts, metres }: PackedLine): PackKind {
  if (metres !== undefined || parts[0]?.letters === "W") return "wire";
  switch (kindOfLine(line, parts[0]?.letters ?? "")) {
    case "resistor":
    case "potentiometer":
      return "resistors";
    case "capacitor":
    case "electrolytic":
      return "capacitors";
    case "inductor":
    case "transformer":
      return "coils";
    case "diode":
    case "led":
    case "transistor":
    case "ic":
    case "module":
    case "display":
    case "tube":
    case "crystal":
      return "semiconductors";
    case "hardware":
    case "heat sink":
      return "hardware";
    case "wire link":
      return "wire";
    case "unknown":
      return parts.length === 0 ? "hardware" : "other";
    default:
      return "electrical";
  }
}
