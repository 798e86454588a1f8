/** Leads from a part to its cell in the list, from the cell to the steps, from `see` to its label. */
import type {
  CancellationToken,
  DefinitionLink,
  Location,
  TextDocumentPositionParams,
} from "vscode-languageserver";
import { definitionInGuide, definitionInList } from "../../features/definition.ts";
import { spanToRange, toLocations } from "../convert.ts";
import type { Feature, FeatureContext } from "./feature.ts";
import { placesAt } from "./place.ts";

export const definition: Feature = (context) => ({
  "textDocument/definition": (params: TextDocumentPositionParams, token) =>
    answer(context, params, token),
});

async function answer(
  context: FeatureContext,
  params: TextDocumentPositionParams,
  token: CancellationToken,
): Promise<DefinitionLink[] | Location[] | null> {
  for (const { guide, uri, list, offset, lines } of await placesAt(context, params, token)) {
    const found = list
      ? definitionInList(guide, list, offset)
      : definitionInGuide(guide, uri, offset);
    if (!found) continue;
    const locations = toLocations(found.targets, context.service);
    if (!context.client.textDocument?.definition?.linkSupport) return locations;
    const originSelectionRange = spanToRange(found.span, lines);
    return locations.map(({ uri: targetUri, range }) => ({
      targetUri,
      targetRange: range,
      targetSelectionRange: range,
      originSelectionRange,
    }));
  }
  return null;
}
