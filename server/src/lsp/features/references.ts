/** Lists every place that has to do with the part, hardware or label at the cursor. */
import type { CancellationToken, Location, ReferenceParams } from "vscode-languageserver";
import { type Reference, referencesInGuide, referencesInList } from "../../features/references.ts";
import { toLocations } from "../convert.ts";
import type { Feature, FeatureContext } from "./feature.ts";
import { placesAt } from "./place.ts";

/** What counts as the declaration: the cell of a part, the label, the name that is given a value. */
const DECLARING: ReadonlySet<Reference["as"]> = new Set(["listed", "defined", "label"]);

export const references: Feature = (context) => ({
  "textDocument/references": (params: ReferenceParams, token) => answer(context, params, token),
});

async function answer(
  context: FeatureContext,
  params: ReferenceParams,
  token: CancellationToken,
): Promise<Location[] | null> {
  const found: Reference[] = [];
  for (const { guide, uri, list, offset } of await placesAt(context, params, token)) {
    found.push(
      ...(list ? referencesInList(guide, list, offset) : referencesInGuide(guide, uri, offset)),
    );
  }
  const { includeDeclaration } = params.context;
  const wanted = found.filter(({ as }) => includeDeclaration || !DECLARING.has(as));
  return wanted.length > 0 ? toLocations(uniquePlaces(wanted), context.service) : null;
}

/** Several guides may share the list and name its cell each. */
function uniquePlaces(found: readonly Reference[]): readonly Reference[] {
  const byPlace = new Map(
    found.map((one) => [`${one.uri}#${one.span.start}-${one.span.end}`, one]),
  );
  return [...byPlace.values()];
}
