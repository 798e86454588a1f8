/** Fills the client's views: a guide at a glance. */
import type { CancellationToken } from "vscode-languageserver";
import { overviewOf, type Spot } from "../../features/overview.ts";
import type { GuideState } from "../../model/guideState.ts";
import type { Service } from "../../service.ts";
import { canonicalUri } from "../../workspace/paths.ts";
import { spanToRange } from "../convert.ts";
import {
  OVERVIEW,
  type OverviewParams,
  type OverviewResult,
  type SentOverview,
  type SentSpot,
} from "../protocol.ts";
import type { Feature, FeatureContext } from "./feature.ts";

export const overview: Feature = (context) => ({
  [OVERVIEW]: (params: OverviewParams, token) => answer(context, params, token),
});

async function answer(
  { service, caughtUp }: FeatureContext,
  params: OverviewParams,
  token: CancellationToken,
): Promise<OverviewResult> {
  await caughtUp();
  const [guide] = service.guidesOf(canonicalUri(params.uri));
  return guide && !token.isCancellationRequested ? send(guide, service) : null;
}

function send(guide: GuideState, service: Service): SentOverview {
  const files = new Set([...guide.pages, ...guide.lists].map(({ uri }) => uri));
  const found = overviewOf(
    guide,
    [...files].flatMap((uri) => service.diagnoses(uri)),
  );
  const sent = ({ uri, span }: Spot): SentSpot => ({
    uri,
    range: spanToRange(span, service.lines(uri)!),
  });
  const stages = found.stages.map((stage) => ({
    ...stage,
    spot: sent(stage.spot),
    steps: stage.steps.map((step) => ({ ...step, spot: sent(step.spot) })),
  }));
  return { ...found, stages };
}
