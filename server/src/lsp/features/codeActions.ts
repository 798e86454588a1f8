/**
 * Offers what can be done at the author's selection: the fixes of findings there, all fixes of a check,
 * a comment that allows a finding, and changes to steps, marks and figures.
 */
import type { CancellationToken, CodeAction, CodeActionParams } from "vscode-languageserver";
import { canonicalUri } from "../../workspace/paths.ts";
import { adoptions } from "../actions/adoptions.ts";
import { allowings } from "../actions/allowings.ts";
import { changes } from "../actions/changes.ts";
import { fixes, fixesOfCheck, safeFixes } from "../actions/fixes.ts";
import { LateEdits } from "../actions/lateEdits.ts";
import type { Offer, Requested } from "../actions/offer.ts";
import { rangeToSpan } from "../convert.ts";
import { CodeActionKind } from "../values.ts";
import type { Feature, FeatureContext } from "./feature.ts";

/** In the order in which they are shown. */
const OFFERS: readonly { readonly kind: string; readonly offer: Offer }[] = [
  { kind: CodeActionKind.QuickFix, offer: fixes },
  { kind: CodeActionKind.QuickFix, offer: fixesOfCheck },
  { kind: CodeActionKind.QuickFix, offer: allowings },
  { kind: CodeActionKind.Rewrite, offer: changes("rewrite") },
  { kind: CodeActionKind.Rewrite, offer: adoptions },
  { kind: CodeActionKind.Move, offer: changes("move") },
  { kind: CodeActionKind.FixAll, offer: safeFixes },
];

export const codeActions: Feature = (context) => {
  const late = new LateEdits(context);
  return {
    "textDocument/codeAction": (params: CodeActionParams, token) =>
      answer(context, late, params, token),
    "codeAction/resolve": (action: CodeAction) => late.resolve(action),
  };
};

async function answer(
  context: FeatureContext,
  late: LateEdits,
  params: CodeActionParams,
  token: CancellationToken,
): Promise<CodeAction[]> {
  const wanted = OFFERS.filter(({ kind }) => isWanted(kind, params.context.only));
  if (wanted.length === 0) return [];
  await context.caughtUp();
  const uri = canonicalUri(params.textDocument.uri);
  const lines = context.service.openLines(uri);
  if (!lines || token.isCancellationRequested) return [];
  const requested: Requested = { context, uri, lines, span: rangeToSpan(params.range, lines) };
  const actions: CodeAction[] = [];
  for (const { kind, offer } of wanted) {
    for (const offered of offer(requested)) {
      const action = await late.toAction({ kind, ...offered }, uri);
      if (action) actions.push(action);
    }
  }
  return actions;
}

/** Source actions come only when they are asked for. */
function isWanted(kind: string, only: readonly string[] | undefined): boolean {
  if (!only) return !kind.startsWith("source");
  return only.some((one) => kind === one || kind.startsWith(`${one}.`));
}
