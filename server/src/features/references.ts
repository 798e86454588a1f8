/** Every place that has to do with a part, a line of hardware or a label. */
import { placeOf } from "../checks/verdict.ts";
import type { GuideState } from "../model/guideState.ts";
import type { PartsList } from "../model/list/partsList.ts";
import type { Part, Supply } from "../model/parts.ts";
import type { PieceNode } from "../model/pieceNode.ts";
import type { Role } from "../syntax/dialect.ts";
import { type Span, shift, touches } from "../text/span.ts";
import { cellOf, type Target, unique } from "./definition.ts";
import { figureNamingAt, namingsOf } from "./naming/figureNamings.ts";
import { PartMatcher } from "./naming/matcher.ts";
import { namingsIn } from "./naming/namings.ts";
import { pieceAt } from "./pieceAt.ts";
import { subjectInGuide, subjectInList } from "./subject.ts";

export interface Reference extends Target {
  /**
   * `listed`: the cell in the parts list; `defined`: where a figure gets its value; `named`: without
   * a role, in the prose or a figure.
   */
  readonly as: Role | "listed" | "defined" | "named";
}

/** References to what stands at an offset of a page. */
export function referencesInGuide(
  guide: GuideState,
  uri: string,
  offset: number,
): readonly Reference[] {
  const label = labelAt(guide, uri, offset);
  if (label) return referencesToLabel(guide, label.name);
  const figure = figureNamingAt(guide, uri, offset);
  if (figure?.key !== undefined) return referencesToFigure(guide, figure.key);
  const subject = subjectInGuide(guide, uri, offset);
  return subject ? referencesTo(guide, subject.supplies) : [];
}

/** References to the parts or the hardware at an offset of a parts list. */
export function referencesInList(
  guide: GuideState,
  list: PartsList,
  offset: number,
): readonly Reference[] {
  const subject = subjectInList(guide, list, offset);
  return subject ? referencesTo(guide, subject.supplies) : [];
}

/** Each use and each naming of the supplies: their cells, the marks and the prose, then figures. */
function referencesTo(guide: GuideState, supplies: readonly Supply[]): readonly Reference[] {
  const listed = supplies.map((supply): Reference => ({ ...cellOf(supply), as: "listed" }));
  const uses = supplies.flatMap((supply) =>
    guide.uses(supply).map(({ resolved, span, role }) => ({
      piece: resolved.piece,
      span,
      as: role,
    })),
  );
  const parts = supplies.filter((supply) => supply.kind === "part");
  const places = [...uses, ...namings(guide, parts)].sort(
    (a, b) => a.piece.order - b.piece.order || a.span.start - b.span.start,
  );
  const inText = places.map(({ as, ...anchor }): Reference => ({ ...placeOf(anchor), as }));
  return unique([...listed, ...inText, ...inFigures(guide, parts)]);
}

/** Namings that are no uses: in the prose, and behind `except`. */
function* namings(guide: GuideState, parts: readonly Part[]) {
  if (parts.length === 0) return;
  const matcher = new PartMatcher(parts, guide.kit);
  for (const piece of guide.pieces) {
    for (const naming of namingsIn(piece)) {
      if (naming.item && naming.item.kind !== "set") continue;
      if (matcher.matches(naming)) yield { piece, span: naming.span, as: "named" as const };
    }
  }
}

function* inFigures(guide: GuideState, parts: readonly Part[]): Iterable<Reference> {
  const wanted = new Set(parts);
  for (const { at, part } of figureNamings(guide)) {
    if (part && wanted.has(part)) yield { ...placeOf(at), as: "named" };
  }
}

/** Every place of a figure's name; where it gets its value comes first. */
function referencesToFigure(guide: GuideState, key: string): readonly Reference[] {
  const found: Reference[] = [];
  for (const naming of figureNamings(guide)) {
    if (naming.key !== key) continue;
    const defines =
      naming.definition === naming.figure && naming.text === naming.figure.figure.name?.text;
    const reference: Reference = { ...placeOf(naming.at), as: defines ? "defined" : "named" };
    if (defines) found.unshift(reference);
    else found.push(reference);
  }
  return unique(found);
}

function* figureNamings(guide: GuideState) {
  for (const figure of guide.figures.all()) yield* namingsOf(figure, guide);
}

/** The label that stands or is referred to at an offset of a page. */
export function labelAt(
  guide: GuideState,
  uri: string,
  offset: number,
): { readonly name: string; readonly span: Span } | undefined {
  const piece = pieceAt(guide, uri, offset);
  if (!piece) return undefined;
  const found = [...piece.labels, ...piece.references].find(({ span }) =>
    touches(span, offset - piece.start),
  );
  return found && { name: found.name, span: shift(found.span, piece.start) };
}

function referencesToLabel(guide: GuideState, name: string): readonly Reference[] {
  const at = (as: Role) => (anchor: { readonly piece: PieceNode; readonly span: Span }) => ({
    ...placeOf(anchor),
    as,
  });
  const uses = [...guide.references()].filter((one) => one.name === name);
  return [...guide.labels(name).map(at("label")), ...uses.map(at("see"))];
}
