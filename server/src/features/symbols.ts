/** Parts and stages that are found by a few letters, wherever in the workspace they stand. */

import { placeOf } from "../checks/verdict.ts";
import type { GuideState } from "../model/guideState.ts";
import { shownValue } from "../model/list/shownValue.ts";
import type { Part } from "../model/parts.ts";
import { cellOf, type Target } from "./definition.ts";

export interface FoundSymbol extends Target {
  readonly kind: "part" | "stage";
  readonly name: string;
  /** What it belongs to: the guide, for a part with its value. */
  readonly within: string;
}

/** No query gives more from one guide. */
const MOST = 200;

/** Stages by their titles, parts by their designators and values; an empty query finds stages. */
export function symbolsMatching(guide: GuideState, query: string): readonly FoundSymbol[] {
  const wanted = query.trim().toLowerCase();
  const found: FoundSymbol[] = [];
  const title = guide.frontMatter.title?.value ?? "";
  for (const { heading, number, steps } of guide.stages) {
    if (!heading || steps.length === 0 || found.length === MOST) continue;
    const name = `${number} ${heading.fact.title}`;
    if (!startsWord(name, wanted)) continue;
    const place = placeOf({ piece: heading.piece, span: heading.fact.span });
    found.push({ kind: "stage", name, within: title, ...place });
  }
  if (wanted === "") return found;
  for (const part of guide.parts) {
    if (found.length === MOST) break;
    if (matches(part, wanted)) found.push(symbolOf(part, title));
  }
  return found;
}

function matches({ name, line }: Part, wanted: string): boolean {
  return startsWord(`${name} ${shownValue(line)}`, wanted);
}

/** Whether a word of the text begins as wanted. */
function startsWord(text: string, wanted: string): boolean {
  return ` ${text.toLowerCase()}`.includes(` ${wanted}`);
}

function symbolOf(part: Part, title: string): FoundSymbol {
  const value = shownValue(part.line);
  const within = [value, part.board, title].filter(Boolean).join(" · ");
  return { kind: "part", name: part.name, within, ...cellOf(part) };
}
