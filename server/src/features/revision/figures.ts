/** Figures that come to something else under the new list. */
import { nameOf } from "../../checks/figures/problems.ts";
import { placeOf } from "../../checks/verdict.ts";
import { listNames } from "../../checks/words.ts";
import type { GuideFigure } from "../../model/figures/figure.ts";
import type { GuideState } from "../../model/guideState.ts";
import { printLimits, printValue } from "../../quantity/printRange.ts";
import { namingsOf } from "../naming/figureNamings.ts";
import type { Draft } from "./drafts.ts";
import { type Revision, revisedParts } from "./revisedParts.ts";

export function touchedFigures(revision: Revision): Draft[] {
  const { before, after } = revision;
  const old = figuresByPlace(before);
  const changed = new Set(
    revisedParts(revision).flatMap(({ kind, after }) => (kind === "changed" && after) || []),
  );
  const drafts: Draft[] = [];
  for (const [key, figure] of figuresByPlace(after)) {
    const was = old.get(key);
    if (!was) continue;
    const [earlier, later] = [resultOf(was), resultOf(figure)];
    const name = `${figure.figure.reading ? "read " : ""}${nameOf(figure)}`;
    if (earlier !== later) {
      const message = `${name}: ${earlier} → ${later}.`;
      drafts.push(draftOf(figure, message, message));
      continue;
    }
    const parts = [...namingsOf(figure, after)].flatMap(({ part }) => part ?? []);
    const named = [...new Set(parts)].filter((part) => changed.has(part));
    if (named.length === 0) continue;
    const names = listNames(named.map(({ name }) => ({ name })));
    const message = `${name} stays at ${later}, but ${names} changed: see whether it still holds.`;
    drafts.push(draftOf(figure, message, undefined));
  }
  return drafts;
}

function draftOf(figure: GuideFigure, message: string, note: string | undefined): Draft {
  return { kind: "figure", at: figure.at(), step: figure.step, message, note, names: [] };
}

function figuresByPlace(guide: GuideState): ReadonlyMap<string, GuideFigure> {
  return new Map(
    guide.figures.all().map((figure) => {
      const { uri, span } = placeOf(figure.at());
      return [`${uri} ${span.start}`, figure];
    }),
  );
}

/** `24 W (20 W … 29 W)`, of a reading its limits, or that there is no value. */
function resultOf({ figure, evaluation }: GuideFigure): string {
  const value = evaluation?.value;
  if (!value) return "no value";
  const limit = figure.reading?.limit;
  const limits = printLimits(value);
  if (limit === "between") return plain(limits);
  const sign = limit === "below" ? "< " : limit === "above" ? "> " : "";
  return plain(sign + printValue(value) + (value.min < value.max ? ` (${limits})` : ""));
}

function plain(text: string): string {
  return text.replaceAll("\u00a0", " ");
}
