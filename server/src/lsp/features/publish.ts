/** Makes the files of a guide's publication for the client, which writes them. */
import { ResponseError } from "vscode-jsonrpc";
import type { CancellationToken } from "vscode-languageserver";
import type { GuideState } from "../../model/guideState.ts";
import type { Service } from "../../service.ts";
import { canonicalUri } from "../../workspace/paths.ts";
import {
  PUBLISH,
  PUBLISHABLE,
  type PublishableParams,
  type PublishableResult,
  type PublishParams,
  type PublishResult,
} from "../protocol.ts";
import { ErrorCode } from "../values.ts";
import type { Feature, FeatureContext } from "./feature.ts";

export const publish: Feature = (context) => ({
  [PUBLISHABLE]: (params: PublishableParams) => tellOutputs(context, params),
  [PUBLISH]: (params: PublishParams, token) => makeFiles(context, params, token),
});

async function tellOutputs(
  { service, caughtUp }: FeatureContext,
  params: PublishableParams,
): Promise<PublishableResult> {
  await caughtUp();
  const [guide] = service.guidesOf(canonicalUri(params.uri));
  if (!guide) return null;
  const { OUTPUTS } = await import("../../publish/outputs/all.ts");
  const outputs = OUTPUTS.map(({ name, summary }) => ({ name, summary }));
  return { guide: guide.pages[0]!.uri, errors: errorsOf(guide, service), outputs };
}

async function makeFiles(
  { service, caughtUp, tell }: FeatureContext,
  params: PublishParams,
  token: CancellationToken,
): Promise<PublishResult> {
  await caughtUp();
  const [guide] = service.guidesOf(canonicalUri(params.guide));
  if (!guide) return null;
  const { OUTPUT_NAMES } = await import("../../publish/outputs/all.ts");
  const { sentOutput } = await import("../sentOutput.ts");
  const { picturesBeside, wordsPerMinute, workDoneToken } = params;
  const publication = await service.publish(
    guide,
    {
      outputs: OUTPUT_NAMES.filter((name) => params.outputs.includes(name)),
      picturesBeside,
      wordsPerMinute,
      packBy: undefined,
      errors: errorsOf(guide, service),
    },
    async (done, of) => {
      if (token.isCancellationRequested) {
        throw new ResponseError(ErrorCode.RequestCancelled, "Publishing was cancelled.");
      }
      if (workDoneToken === undefined) return;
      const message = `Reading picture ${done + 1} of ${of}`;
      const value = { kind: "report", message, percentage: Math.floor((100 * done) / of) };
      tell("$/progress", { token: workDoneToken, value });
    },
  );
  const { files, faults, warnings } = publication;
  const sources = [...guide.pages, ...guide.lists].map(({ uri }) => uri);
  return { files: files.map(sentOutput), faults, warnings, sources };
}

function errorsOf(guide: GuideState, service: Service): number {
  const files = new Set([...guide.pages, ...guide.lists].map(({ uri }) => uri));
  const found = [...files].flatMap((uri) => service.diagnoses(uri));
  return found.filter(({ severity }) => severity === "error").length;
}
