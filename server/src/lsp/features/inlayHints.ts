/** Shows in the text what formulas come to. */
import type { CancellationToken, InlayHint, InlayHintParams } from "vscode-languageserver";
import { figureHints } from "../../features/figure/hints.ts";
import { rangeToSpan, toPosition } from "../convert.ts";
import { InlayHintKind } from "../values.ts";
import type { Feature, FeatureContext } from "./feature.ts";
import { placesOf } from "./place.ts";

export const inlayHints: Feature = (context) => ({
  "textDocument/inlayHint": (params: InlayHintParams, token) => answer(context, params, token),
});

async function answer(
  context: FeatureContext,
  { textDocument, range }: InlayHintParams,
  token: CancellationToken,
): Promise<InlayHint[] | null> {
  const [place] = await placesOf(context, textDocument, token);
  if (!place || place.list) return null;
  const { guide, uri, lines } = place;
  return figureHints(guide, uri, rangeToSpan(range, lines)).map(({ at, text, tooltip }) => ({
    position: toPosition(lines.positionAt(at)),
    label: text,
    kind: InlayHintKind.Type,
    ...(tooltip && { tooltip }),
  }));
}
