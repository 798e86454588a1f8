/** What lies in the box, by bag, stage or kind: every line of the parts list once, whole or shared out. */
import type { Stage } from "../../model/guide.ts";
import type { GuideState } from "../../model/guideState.ts";
import type { Part } from "../../model/parts.ts";
import { joinLines } from "./joinLines.ts";
import { type Making, makingOf } from "./making.ts";
import {
  PACK_KINDS,
  type PackedLine,
  type PackKind,
  packedLines,
  packKind,
} from "./packedLines.ts";
import { type Share, sharesOf } from "./stageShares.ts";

export const PACK_BY = ["bag", "stage", "kind"] as const;
/** `bag`: as the list's own column says. */
export type PackBy = (typeof PACK_BY)[number];

/** One kind of part of the list, or its share for one stage. */
export interface PackRow extends Omit<Share, "stage"> {
  readonly packed: PackedLine;
}

export interface PackGroup {
  /** The bag's name, the stage or the kind; undefined for what has none. */
  readonly of: string | Stage | undefined;
  readonly rows: readonly PackRow[];
}

export interface PackingList {
  readonly by: PackBy;
  readonly groups: readonly PackGroup[];
  /** Lines of which nothing lies in the box, because the builder makes the parts or leaves them out. */
  readonly made: readonly PackedLine[];
  readonly unfitted: readonly PackedLine[];
  readonly lines: readonly PackedLine[];
  readonly making: Making;
}

/** `by`: undefined takes the list's bags where it has any, else the stages, else the kinds. */
export function packingList(guide: GuideState, by: PackBy | undefined): PackingList {
  const making = makingOf(guide);
  const lines = joinLines(packedLines(guide, making));
  const packed = lines.filter(({ status }) => status === "packed");
  const way = by ?? usualWay(packed, guide);
  return {
    by: way,
    groups: groupsOf(packed, way, guide),
    made: lines.filter(({ status }) => status === "made"),
    unfitted: lines.filter(({ status }) => status === "unfitted"),
    lines,
    making,
  };
}

function usualWay(lines: readonly PackedLine[], guide: GuideState): PackBy {
  if (lines.some((one) => bagOf(one) !== undefined)) return "bag";
  const isStaged = lines.some((one) => sharesOf(one, guide).some(({ stage }) => stage));
  return isStaged ? "stage" : "kind";
}

function bagOf({ line }: PackedLine): string | undefined {
  return line.cells.bag?.text || undefined;
}

function groupsOf(lines: readonly PackedLine[], by: PackBy, guide: GuideState): PackGroup[] {
  switch (by) {
    case "bag": {
      const names = [...new Set(lines.map(bagOf))].sort(byName);
      return names.map((of) => ({ of, rows: rowsOf(lines.filter((one) => bagOf(one) === of)) }));
    }
    case "kind":
      return PACK_KINDS.map((of: PackKind) => ({
        of,
        rows: rowsOf(lines.filter((one) => packKind(one) === of)),
      })).filter(({ rows }) => rows.length > 0);
    case "stage": {
      const rows = lines.flatMap((packed) =>
        sharesOf(packed, guide).map(({ stage, ...share }) => ({
          stage,
          row: { packed, ...share },
        })),
      );
      return [...guide.stages, undefined]
        .map((of) => ({ of, rows: rows.filter(({ stage }) => stage === of).map(({ row }) => row) }))
        .filter(({ rows }) => rows.length > 0);
    }
  }
}

function rowsOf(lines: readonly PackedLine[]): PackRow[] {
  return lines.map((packed) => {
    const { parts, pieces, spare, metres } = packed;
    return { packed, parts, pieces, spare, metres };
  });
}

/** Bags by letter and number: A, B, 2, 10; what has none comes last. */
function byName(a: string | undefined, b: string | undefined): number {
  if (a === undefined || b === undefined) return a === b ? 0 : a === undefined ? 1 : -1;
  const [left, right] = [padded(a), padded(b)];
  return left < right ? -1 : left > right ? 1 : 0;
}

function padded(name: string): string {
  return name.toLowerCase().replace(/\d{1,9}/g, (digits) => digits.padStart(9, "0"));
}

/** Kinds, pieces and lengths of some rows; pieces of a kind that is shared out count in each share. */
export interface PackTotal {
  readonly lines: number;
  readonly pieces: number;
  readonly spare: number;
  readonly lengths: number;
}

export function totalOf(rows: readonly PackRow[]): PackTotal {
  return {
    lines: new Set(rows.map(({ packed }) => packed)).size,
    pieces: rows.reduce((sum, { pieces }) => sum + (pieces ?? 0), 0),
    spare: rows.reduce((sum, { spare }) => sum + spare, 0),
    lengths: rows.filter(({ metres }) => metres !== undefined).length,
  };
}

/** Parts for whose making a line's pieces or lengths are meant. */
export function madeFrom({ hardware }: PackedLine, making: Making): readonly Part[] {
  if (!hardware) return [];
  return [...making]
    .filter(([, materials]) => materials.some((one) => one.hardware === hardware))
    .map(([part]) => part);
}
