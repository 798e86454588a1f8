/** Marks the same part or label in the file along with the one at the cursor. */
import type {
  CancellationToken,
  DocumentHighlight,
  TextDocumentPositionParams,
} from "vscode-languageserver";
import { highlights } from "../../features/highlights.ts";
import { spanToRange } from "../convert.ts";
import { DocumentHighlightKind } from "../values.ts";
import type { Feature, FeatureContext } from "./feature.ts";
import { placesAt } from "./place.ts";

export const highlight: Feature = (context) => ({
  "textDocument/documentHighlight": (params: TextDocumentPositionParams, token) =>
    answer(context, params, token),
});

async function answer(
  context: FeatureContext,
  params: TextDocumentPositionParams,
  token: CancellationToken,
): Promise<DocumentHighlight[] | null> {
  for (const { guide, uri, list, offset, lines } of await placesAt(context, params, token)) {
    const found = highlights(guide, uri, list, offset);
    if (found.length === 0) continue;
    return found.map(({ span, kind }) => ({
      range: spanToRange(span, lines),
      kind: kind === "settles" ? DocumentHighlightKind.Write : DocumentHighlightKind.Read,
    }));
  }
  return null;
}
