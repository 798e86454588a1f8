/** Begins a guide from a parts list for the client, which writes the file. */
import { canonicalUri } from "../../workspace/paths.ts";
import { START_GUIDE, type StartGuideParams, type StartGuideResult } from "../protocol.ts";
import type { Feature } from "./feature.ts";

export const startGuide: Feature = ({ service }) => ({
  [START_GUIDE]: (params: StartGuideParams): Promise<StartGuideResult> =>
    service.newGuide({ ...params, list: canonicalUri(params.list) }),
});
