/** Folds stages, steps, notes and the front matter, and lets a selection grow along them. */
import type {
  CancellationToken,
  FoldingRange,
  FoldingRangeParams,
  SelectionRange,
  SelectionRangeParams,
} from "vscode-languageserver";
import { foldsOf } from "../../features/folding.ts";
import { sectionsOf } from "../../features/sections.ts";
import { selectionsAt } from "../../features/selection.ts";
import { fromPosition, spanToRange } from "../convert.ts";
import type { Feature, FeatureContext } from "./feature.ts";
import { placesOf } from "./place.ts";

export const folding: Feature = (context) => ({
  "textDocument/foldingRange": (params: FoldingRangeParams, token) => folds(context, params, token),
  "textDocument/selectionRange": (params: SelectionRangeParams, token) =>
    selections(context, params, token),
});

async function folds(
  context: FeatureContext,
  { textDocument }: FoldingRangeParams,
  token: CancellationToken,
): Promise<FoldingRange[] | null> {
  const [place] = await placesOf(context, textDocument, token);
  if (!place || place.list) return null;
  return foldsOf(place.guide, place.uri)
    .map((span) => place.lines.range(span))
    .filter(({ start, end }) => end.line > start.line)
    .map(({ start, end }) => ({ startLine: start.line, endLine: end.line }));
}

async function selections(
  context: FeatureContext,
  { textDocument, positions }: SelectionRangeParams,
  token: CancellationToken,
): Promise<SelectionRange[] | null> {
  const [place] = await placesOf(context, textDocument, token);
  if (!place || place.list) return null;
  const { guide, uri, lines } = place;
  const sections = sectionsOf(guide, uri);
  return positions.map((position) => {
    const offset = lines.offsetAt(fromPosition(position));
    const spans = selectionsAt(guide, uri, offset, sections);
    return spans.reduceRight<SelectionRange | undefined>(
      (parent, span) => ({ range: spanToRange(span, lines), ...(parent && { parent }) }),
      undefined,
    )!;
  });
}
