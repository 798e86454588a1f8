/** What the editor marks along with the word at the cursor: the same part or label in the same file. */
import { ACCOUNTING } from "../model/accounting.ts";
import type { GuideState } from "../model/guideState.ts";
import type { PartsList } from "../model/list/partsList.ts";
import type { Span } from "../text/span.ts";
import { type Reference, referencesInGuide, referencesInList } from "./references.ts";

export interface Highlight {
  readonly span: Span;
  /** `settles`: the part is fitted or listed here; `names`: it is named or used otherwise. */
  readonly kind: "settles" | "names";
}

export function highlights(
  guide: GuideState,
  uri: string,
  list: PartsList | undefined,
  offset: number,
): readonly Highlight[] {
  const references = list
    ? referencesInList(guide, list, offset)
    : referencesInGuide(guide, uri, offset);
  return references
    .filter((one) => one.uri === uri)
    .map(({ span, as }) => ({ span, kind: settles(as) ? "settles" : "names" }));
}

function settles(as: Reference["as"]): boolean {
  if (as === "listed" || as === "defined" || as === "label") return true;
  return as !== "named" && ACCOUNTING.has(as);
}
