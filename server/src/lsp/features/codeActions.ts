/** Offers the fixes of the findings that the author's selection touches. */
import {
  type CancellationToken,
  type CodeAction,
  CodeActionKind,
  type CodeActionParams,
  CodeActionRequest,
} from "vscode-languageserver";
import { canonicalUri } from "../../workspace/paths.ts";
import { rangeToSpan, toDiagnostic, toWorkspaceEdit } from "../convert.ts";
import type { Feature, FeatureContext } from "./feature.ts";

export const codeActions: Feature = {
  capabilities: () => ({ codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix] } }),
  onLists: [CodeActionRequest.method],
  listen(context) {
    context.connection.onCodeAction((params, token) => answer(context, params, token));
  },
};

async function answer(
  { service, caughtUp }: FeatureContext,
  params: CodeActionParams,
  token: CancellationToken,
): Promise<CodeAction[]> {
  const only = params.context.only;
  if (only && !only.some((kind) => CodeActionKind.QuickFix.startsWith(kind))) return [];
  await caughtUp();
  const uri = canonicalUri(params.textDocument.uri);
  const lines = service.openLines(uri);
  if (!lines || token.isCancellationRequested) return [];
  const span = rangeToSpan(params.range, lines);
  const actions: CodeAction[] = [];
  for (const diagnosis of service.diagnoses(uri)) {
    if (diagnosis.span.start > span.end || diagnosis.span.end < span.start) continue;
    const fixes = diagnosis.fixes();
    for (const fix of fixes) {
      const edit = toWorkspaceEdit(fix, service);
      if (!edit) continue;
      actions.push({
        title: fix.title,
        kind: CodeActionKind.QuickFix,
        diagnostics: [toDiagnostic(diagnosis)],
        isPreferred: fix.safe && fixes.length === 1,
        edit,
      });
    }
  }
  return actions;
}
