/** Begins a guide from a parts list for the client, which writes the file. */
import { RequestType } from "vscode-languageserver";
import { canonicalUri } from "../../workspace/paths.ts";
import { START_GUIDE, type StartGuideParams, type StartGuideResult } from "../protocol.ts";
import type { Feature } from "./feature.ts";

const REQUEST = new RequestType<StartGuideParams, StartGuideResult, void>(START_GUIDE);

export const startGuide: Feature = {
  capabilities: () => ({}),
  listen({ connection, service }) {
    connection.onRequest(REQUEST, (params) =>
      service.newGuide({ ...params, list: canonicalUri(params.list) }),
    );
  },
};
