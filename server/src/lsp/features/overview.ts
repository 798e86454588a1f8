/** Fills the client's views: a guide at a glance, and its stages. */
import type { CancellationToken } from "vscode-languageserver";
import { overviewOf } from "../../features/overview.ts";
import { type Spot, stagesOf } from "../../features/stages.ts";
import type { GuideState } from "../../model/guideState.ts";
import type { Service } from "../../service.ts";
import { canonicalUri } from "../../workspace/paths.ts";
import { spanToRange } from "../convert.ts";
import {
  OVERVIEW,
  type OverviewParams,
  type SentSpot,
  type SentStage,
  STAGES,
} from "../protocol.ts";
import type { Feature, FeatureContext } from "./feature.ts";

export const overview: Feature = (context) => ({
  [OVERVIEW]: (params: OverviewParams, token) =>
    answer(context, params, token, (guide) =>
      overviewOf(guide, findingsOf(guide, context.service)),
    ),
  [STAGES]: (params: OverviewParams, token) =>
    answer(context, params, token, (guide) => sentStages(guide, context.service)),
});

async function answer<Result>(
  { service, caughtUp }: FeatureContext,
  params: OverviewParams,
  token: CancellationToken,
  of: (guide: GuideState) => Result,
): Promise<Result | null> {
  await caughtUp();
  const [guide] = service.guidesOf(canonicalUri(params.uri));
  return guide && !token.isCancellationRequested ? of(guide) : null;
}

function findingsOf(guide: GuideState, service: Service) {
  const files = new Set([...guide.pages, ...guide.lists].map(({ uri }) => uri));
  return [...files].flatMap((uri) => service.diagnoses(uri));
}

function sentStages(guide: GuideState, service: Service): SentStage[] {
  const sent = ({ uri, span }: Spot): SentSpot => ({
    uri,
    range: spanToRange(span, service.lines(uri)!),
  });
  return stagesOf(guide, findingsOf(guide, service)).map((stage) => ({
    ...stage,
    spot: sent(stage.spot),
    steps: stage.steps.map((step) => ({ ...step, spot: sent(step.spot) })),
  }));
}
