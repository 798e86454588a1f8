/** What stands at a place of a guide or of its parts list. */

import { placeOf } from "../checks/verdict.ts";
import type { GuideState } from "../model/guideState.ts";
import { cellsOf, type ListLine, type PartsList } from "../model/list/partsList.ts";
import type { Part, Supply } from "../model/parts.ts";
import type { PieceNode } from "../model/pieceNode.ts";
import { type Span, shift, touches } from "../text/span.ts";
import { figureNamingAt } from "./naming/figureNamings.ts";
import { namingsIn, partsNamed } from "./naming/namings.ts";
import { pieceAt } from "./pieceAt.ts";

/** Parts or hardware that a stretch of text means; `span` counts in the file's text. */
export interface Subject {
  readonly span: Span;
  readonly supplies: readonly Supply[];
}

/** The parts at an offset of a page: of a mark's item, or a designator in the prose. */
export function subjectInGuide(
  guide: GuideState,
  uri: string,
  offset: number,
): Subject | undefined {
  const piece = pieceAt(guide, uri, offset);
  if (!piece) return undefined;
  const at = offset - piece.start;
  return ofNaming(guide, piece, at) ?? ofItem(piece, at) ?? ofFigure(guide, uri, offset);
}

/** The parts at an offset of a parts list: of the designator there, else of the whole line. */
export function subjectInList(
  guide: GuideState,
  list: PartsList,
  offset: number,
): Subject | undefined {
  const line = lineAt(list, offset);
  if (!line) return undefined;
  const parts = guide.partsOf(line);
  const named = line.designators.filter((one) => touches(one.span, offset));
  if (named.length > 0) {
    const names = new Set(named.map((one) => one.name));
    return { span: named[0]!.span, supplies: parts.filter((part) => names.has(part.name)) };
  }
  const supplies = parts.length > 0 ? parts : guide.hardware.filter((one) => one.line === line);
  return supplies.length > 0 ? { span: cellAt(line, offset) ?? line.span, supplies } : undefined;
}

/** Name of the label that a `see` reference at the offset means. */
export function referenceAt(
  guide: GuideState,
  uri: string,
  offset: number,
): { name: string; span: Span } | undefined {
  const piece = pieceAt(guide, uri, offset);
  const found = piece?.references.find((one) => touches(one.span, offset - piece.start));
  return found && { name: found.name, span: shift(found.span, piece!.start) };
}

function ofNaming(guide: GuideState, piece: PieceNode, at: number): Subject | undefined {
  for (const naming of namingsIn(piece)) {
    if (!touches(naming.span, at)) continue;
    const supplies = partsNamed(naming, guide.kit);
    if (supplies.length > 0) return { span: shift(naming.span, piece.start), supplies };
  }
  return undefined;
}

/** In a figure a designator means the value that the list gives the part. */
function ofFigure(guide: GuideState, uri: string, offset: number): Subject | undefined {
  const naming = figureNamingAt(guide, uri, offset);
  return naming?.part && { span: placeOf(naming.at).span, supplies: [naming.part] };
}

/** A set or an amount. */
function ofItem(piece: PieceNode, at: number): Subject | undefined {
  const mark = piece.marks.find((one) => touches(one.mark.span, at));
  const resolved = mark?.items.find((one) => touches(one.item.span, at));
  if (!resolved || resolved.supplies.length === 0) return undefined;
  return { span: shift(resolved.item.span, piece.start), supplies: resolved.supplies };
}

function lineAt(list: PartsList, offset: number): ListLine | undefined {
  return list.lines.find((line) => touches(line.span, offset));
}

function cellAt(line: ListLine, offset: number): Span | undefined {
  for (const { span } of cellsOf(line)) if (touches(span, offset)) return span;
  return undefined;
}

/** Whether the supply is a part with a designator. */
export function isPart(supply: Supply): supply is Part {
  return supply.kind === "part";
}
