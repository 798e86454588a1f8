/** The worksheet for picking matched sets: a field for each part supplied; the script picks. */
import { matchingOf } from "../../model/matching.ts";
import type { PieceNode } from "../../model/pieceNode.ts";
import type { PartMark } from "../../syntax/dialect.ts";
import { escapeHtml } from "../html.ts";
import { filled } from "../words/words.ts";
import type { FillContext } from "./filler.ts";

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
