/** Shows the parameters of a trade function while its call is written. */
import type {
  CancellationToken,
  SignatureHelp,
  SignatureInformation,
  TextDocumentPositionParams,
} from "vscode-languageserver";
import { signatureAt } from "../../features/signature.ts";
import type { Feature, FeatureContext } from "./feature.ts";
import { placesAt } from "./place.ts";

export const signatureHelp: Feature = (context) => ({
  "textDocument/signatureHelp": (params: TextDocumentPositionParams, token) =>
    answer(context, params, token),
});

async function answer(
  context: FeatureContext,
  params: TextDocumentPositionParams,
  token: CancellationToken,
): Promise<SignatureHelp | null> {
  for (const { guide, uri, list, offset } of await placesAt(context, params, token)) {
    const found = list ? undefined : signatureAt(guide, uri, offset);
    if (!found) continue;
    const signature: SignatureInformation = {
      label: found.label,
      documentation: { kind: "markdown", value: found.documentation },
      parameters: found.parameters.map(({ span, documentation }) => ({
        label: [span.start, span.end],
        documentation,
      })),
    };
    return { signatures: [signature], activeSignature: 0, activeParameter: found.active };
  }
  return null;
}
