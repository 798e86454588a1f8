/** Keeps the client's preview of one guide current. */
import { canonicalUri } from "../../workspace/paths.ts";
import { toRange } from "../convert.ts";
import { PreviewFeed } from "../previewFeed.ts";
import {
  FIND_IN_PREVIEW,
  type FindInPreviewParams,
  type FindInPreviewResult,
  HIDE_PREVIEW,
  SHOW_PREVIEW,
  type ShowPreviewParams,
  SOURCE_OF_PREVIEW,
  type SourceOfPreviewParams,
  type SourceOfPreviewResult,
} from "../protocol.ts";
import type { Feature, FeatureContext } from "./feature.ts";

export const preview: Feature = (context) => {
  const feed = new PreviewFeed(context);
  return {
    [SHOW_PREVIEW]: ({ uri }: ShowPreviewParams) => feed.show(canonicalUri(uri)),
    [HIDE_PREVIEW]: () => feed.hide(),
    [FIND_IN_PREVIEW]: async (params: FindInPreviewParams) => {
      await feed.caughtUp();
      return find(params, feed, context);
    },
    [SOURCE_OF_PREVIEW]: async (params: SourceOfPreviewParams) => {
      await feed.caughtUp();
      return sourceOf(params, feed, context);
    },
  };
};

function find(
  params: FindInPreviewParams,
  feed: PreviewFeed,
  { service }: FeatureContext,
): FindInPreviewResult {
  const uri = canonicalUri(params.uri);
  const lines = service.lines(uri);
  if (!lines || !feed.guide) return null;
  const place = feed.preview?.find(feed.guide, uri, lines.lineStart(params.line));
  if (!place) return null;
  const { start, end } = lines.range(place.stretch);
  const share = (params.line - start.line) / Math.max(1, end.line - start.line);
  return { block: place.id, share: Math.min(1, Math.max(0, share)) };
}

function sourceOf(
  { block, share, step }: SourceOfPreviewParams,
  feed: PreviewFeed,
  { service }: FeatureContext,
): SourceOfPreviewResult {
  const found = feed.guide && feed.preview?.source(feed.guide, block);
  const lines = found && service.lines(found.stretch.uri);
  if (!found || !lines) return null;
  const { piece, stretch } = found;
  const { uri } = stretch;
  const named = step === undefined ? undefined : piece?.steps.find((one) => one.number === step);
  const from = named ? piece!.start + named.fact.span.start : stretch.start;
  const { start, end } = lines.range({ start: from, end: stretch.end });
  if (share === 0) return { uri, range: toRange({ start, end: start }) };
  const line = start.line + Math.floor(share * (end.line - start.line));
  const at = { line, column: 0 };
  return { uri, range: toRange({ start: at, end: at }) };
}
