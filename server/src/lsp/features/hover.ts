/** Tells of the part that the author points at. */
import type { CancellationToken, Hover, TextDocumentPositionParams } from "vscode-languageserver";
import { hoverInGuide, hoverInList } from "../../features/hover.ts";
import { spanToRange } from "../convert.ts";
import { MarkupKind } from "../values.ts";
import type { Feature, FeatureContext } from "./feature.ts";
import { placesAt } from "./place.ts";

export const hover: Feature = (context) => ({
  "textDocument/hover": (params: TextDocumentPositionParams, token) =>
    answer(context, params, token),
});

async function answer(
  context: FeatureContext,
  params: TextDocumentPositionParams,
  token: CancellationToken,
): Promise<Hover | null> {
  for (const { guide, uri, list, offset, lines } of await placesAt(context, params, token)) {
    const found = list ? hoverInList(guide, list, offset) : hoverInGuide(guide, uri, offset);
    if (!found) continue;
    const contents = { kind: MarkupKind.Markdown, value: found.markdown };
    return { contents, range: spanToRange(found.span, lines) };
  }
  return null;
}
