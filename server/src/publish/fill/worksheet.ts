/** The worksheet for picking matched sets: a field for each part supplied; the script picks. */
import type { GuideState } from "../../model/guideState.ts";
import type { ListLine } from "../../model/list/partsList.ts";
import { suppliedPieces } from "../../model/list/supplied.ts";
import type { PieceNode } from "../../model/pieceNode.ts";
import type { PartMark } from "../../syntax/dialect.ts";
import { escapeHtml } from "../html.ts";
import { filled } from "../words/words.ts";
import type { FillContext } from "./filler.ts";

/** What is picked from what: `sets` sets of `size` from `lot` parts supplied. */
export interface Matching {
  readonly sets: readonly (readonly string[])[];
  readonly size: number;
  readonly lot: number;
}

/** Undefined where the mark asks for no sets of two or more. */
export function matchingOf(
  mark: PartMark,
  piece: PieceNode,
  guide: GuideState,
): Matching | undefined {
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

/** Most fields of a worksheet: more are picked with the command line. */
const MOST = 200;

export function worksheet(mark: PartMark, piece: PieceNode, context: FillContext): string {
  const { guide, words } = context;
  const matching = matchingOf(mark, piece, guide);
  if (!matching || matching.lot > MOST) return "";
  const { sets, size, lot } = matching;
  const title = filled(words.matching.title, sets.length === 1 ? size : `${sets.length} × ${size}`);
  const fields = Array.from({ length: lot }, (_, index) => {
    const label = escapeHtml(filled(words.matching.reading, index + 1));
    return `<label><span class="number">${index + 1}</span><input type="text" inputmode="decimal" autocomplete="off" aria-label="${label}"></label>`;
  });
  const names = escapeHtml(JSON.stringify(sets));
  return `<div class="worksheet" role="group" aria-label="${escapeHtml(title)}" data-size="${size}" data-sets="${names}"><p class="worktitle">${escapeHtml(title)}</p><p>${escapeHtml(filled(words.matching.task, lot))}</p><div class="fields">${fields.join("")}</div><output class="picked"></output></div>`;
}
