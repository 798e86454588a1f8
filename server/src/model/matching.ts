/** What a mark asks the builder to pick: so many sets of like parts from the lot supplied. */
import type { PartMark } from "../syntax/dialect.ts";
import type { Guide, GuidePiece } from "./guide.ts";
import type { ListLine } from "./list/partsList.ts";
import { suppliedPieces } from "./list/supplied.ts";

/** What is picked from what: `sets` sets of `size` from `lot` parts supplied. */
export interface Matching {
  readonly sets: readonly (readonly string[])[];
  readonly size: number;
  readonly lot: number;
}

/** Undefined where the mark asks for no sets of two or more. */
export function matchingOf(mark: PartMark, piece: GuidePiece, guide: Guide): Matching | undefined {
  const sets = mark.items
    .filter((item) => item.kind === "group")
    .map((item) => item.members.map(({ name }) => name));
  const size = sets[0]?.length ?? 0;
  if (size < 2 || sets.some((set) => set.length !== size)) return undefined;
  const resolved = piece.marks.find((one) => one.mark.span.start === mark.span.start);
  const parts = resolved?.items.flatMap(({ supplies }) => supplies) ?? [];
  const lines = new Set<ListLine>(parts.map(({ line }) => line));
  let lot = 0;
  for (const line of lines) lot += suppliedPieces(line, guide.partsOf(line).length).pieces;
  return { sets, size, lot: Math.max(lot, sets.length * size) };
}
