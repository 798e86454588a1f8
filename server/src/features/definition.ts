/** Where a part is listed, which step fits it, and where a label or a figure's name stands. */
import { placeOf } from "../checks/verdict.ts";
import { accountsFor } from "../model/accounting.ts";
import type { GuideState } from "../model/guideState.ts";
import type { PartsList } from "../model/list/partsList.ts";
import type { Supply } from "../model/parts.ts";
import type { Span } from "../text/span.ts";
import { figureNamingAt } from "./naming/figureNamings.ts";
import { referenceAt, subjectInGuide, subjectInList } from "./subject.ts";

export interface Target {
  readonly uri: string;
  readonly span: Span;
}

/** From a part in the guide to its cell in the list, from `see` to its label, from a name to its figure. */
export function definitionInGuide(
  guide: GuideState,
  uri: string,
  offset: number,
): { span: Span; targets: readonly Target[] } | undefined {
  const reference = referenceAt(guide, uri, offset);
  if (reference) {
    const targets = guide.labels(reference.name).map((label) => placeOf(label));
    return { span: reference.span, targets };
  }
  const figure = figureNamingAt(guide, uri, offset);
  if (figure?.definition) {
    const { definition, at } = figure;
    const name = { ...definition.at(), span: definition.figure.name!.span };
    return { span: placeOf(at).span, targets: [placeOf(name)] };
  }
  const subject = subjectInGuide(guide, uri, offset);
  return subject && { span: subject.span, targets: unique(subject.supplies.map(cellOf)) };
}

/** From a part in the list to the steps that fit it, else to those that use it at all. */
export function definitionInList(
  guide: GuideState,
  list: PartsList,
  offset: number,
): { span: Span; targets: readonly Target[] } | undefined {
  const subject = subjectInList(guide, list, offset);
  if (!subject) return undefined;
  const uses = subject.supplies.flatMap((supply) => [...guide.uses(supply)]);
  const fitting = uses.filter(accountsFor);
  const targets = (fitting.length > 0 ? fitting : uses).map((use) =>
    placeOf({ piece: use.step.piece, span: use.span }),
  );
  return { span: subject.span, targets: unique(targets) };
}

/** Where the list has it. */
export function cellOf(supply: Supply): Target {
  const span = supply.kind === "part" ? supply.listed.span : supply.line.span;
  return { uri: supply.list.uri, span };
}

/** Each place once. */
export function unique<Place extends Target>(targets: readonly Place[]): readonly Place[] {
  const seen = new Set<string>();
  return targets.filter(({ uri, span }) => {
    const key = `${uri}#${span.start}-${span.end}`;
    return !seen.has(key) && seen.add(key);
  });
}
