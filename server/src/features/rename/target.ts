/** What may be renamed at a place: a part, a label, or a figure's name. */
import { placeOf } from "../../checks/verdict.ts";
import type { GuideState } from "../../model/guideState.ts";
import type { ListLine, PartsList } from "../../model/list/partsList.ts";
import type { Part } from "../../model/parts.ts";
import { type Span, shift, touches } from "../../text/span.ts";
import { figureNamingAt } from "../naming/figureNamings.ts";
import { type Naming, namingsIn } from "../naming/namings.ts";
import { pieceAt } from "../pieceAt.ts";
import { labelAt } from "../references.ts";
import { readRangeText } from "./rangeText.ts";

export type RenameTarget =
  | { readonly kind: "part"; readonly span: Span; readonly name: string; readonly part: Part }
  | { readonly kind: "label"; readonly span: Span; readonly name: string }
  | { readonly kind: "figure"; readonly span: Span; readonly name: string };

/** Undefined where there is nothing to rename; a problem where there is, but it cannot be done. */
export type Found = RenameTarget | { readonly problem: string } | undefined;

export function renameTarget(guide: GuideState, uri: string, offset: number): Found {
  const label = labelAt(guide, uri, offset);
  if (label) return { kind: "label", ...label };
  return partNamed(guide, uri, offset) ?? inFigure(guide, uri, offset);
}

/** The part whose designator stands at an offset of the list. */
export function renameTargetInList(guide: GuideState, list: PartsList, offset: number): Found {
  for (const line of list.lines) {
    if (!touches(line.span, offset)) continue;
    const listed = line.designators.filter(({ span }) => touches(span, offset));
    const [one] = listed;
    if (!one) continue;
    const text = list.text.slice(one.span.start, one.span.end);
    const names = listed
      .filter(({ span }) => span.start === one.span.start)
      .map((each) => each.name);
    const { name, span } = nameAt(names, text, one.span, offset);
    const part = partOf(guide, list, line, name);
    return part && { kind: "part", span, name: part.name, part };
  }
  return undefined;
}

function partOf(guide: GuideState, list: PartsList, line: ListLine, name: string) {
  const own = guide.partsOf(line).find((part) => part.name === name);
  if (own) return own;
  // Its line may be that of the chip's socket, or a second listing.
  return guide.parts.find((part) => part.list === list && part.name === name);
}

function partNamed(guide: GuideState, uri: string, offset: number): Found {
  const piece = pieceAt(guide, uri, offset);
  if (!piece) return undefined;
  const at = offset - piece.start;
  for (const naming of namingsIn(piece)) {
    if (!touches(naming.span, at)) continue;
    const found = ofNaming(guide, naming, at);
    if (found) return found;
  }
  return undefined;
}

function ofNaming(guide: GuideState, naming: Naming, at: number): Found {
  const { piece, named, span, board, mark } = naming;
  const text = piece.page.text.slice(piece.start + span.start, piece.start + span.end);
  const names = named.kind === "range" ? named.names : [named.name];
  const one = nameAt(names, text, span, at);
  const { part } = guide.kit.find(one.name, named.board, board);
  if (part) return { kind: "part", span: shift(one.span, piece.start), name: part.name, part };
  if (!mark?.certain) return undefined;
  return { problem: `The parts list has no ${one.name}, so there is nothing to rename it in.` };
}

/** Of a range the end that the cursor touches; both ends by themselves, without the board's name. */
function nameAt(
  names: readonly string[],
  text: string,
  span: Span,
  at: number,
): { readonly name: string; readonly span: Span } {
  const range = names.length > 1 ? readRangeText(text, names[0]!) : undefined;
  if (!range) {
    const skipped = text.length - names[0]!.length;
    const isPrefixed = skipped > 0 && text.toUpperCase().endsWith(names[0]!.toUpperCase());
    const start = span.start + (isPrefixed ? skipped : 0);
    return { name: names[0]!, span: { start, end: span.end } };
  }
  const start = span.start + range.board.length;
  const first = { start, end: start + range.first.length };
  if (at <= first.end) return { name: names[0]!, span: first };
  return { name: names.at(-1)!, span: { start: span.end - range.last.length, end: span.end } };
}

function inFigure(guide: GuideState, uri: string, offset: number): Found {
  const naming = figureNamingAt(guide, uri, offset);
  if (!naming) return undefined;
  const { span } = placeOf(naming.at);
  if (naming.part) {
    const { part } = naming;
    return { kind: "part", span, name: part.name, part };
  }
  if (naming.key === undefined) return undefined;
  if (naming.key.includes("(")) {
    return {
      problem: `\`${naming.text}\` is named after what it belongs to. Rename that: the part, or the rail.`,
    };
  }
  return { kind: "figure", span, name: naming.key };
}
