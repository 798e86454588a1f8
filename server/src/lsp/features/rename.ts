/**
 * Renames a part, a label or a figure's name in the guide, in its parts list, and in every other guide
 * that uses the list.
 */
import { ResponseError } from "vscode-jsonrpc";
import type {
  CancellationToken,
  PrepareRenameResult,
  RenameParams,
  TextDocumentPositionParams,
  WorkspaceEdit,
} from "vscode-languageserver";
import type { RenameEdit } from "../../features/rename/edit.ts";
import { rename as renameIn, samePart } from "../../features/rename/rename.ts";
import {
  type RenameTarget,
  renameTarget,
  renameTargetInList,
} from "../../features/rename/target.ts";
import type { GuideState } from "../../model/guideState.ts";
import type { Service } from "../../service.ts";
import { canonicalUri } from "../../workspace/paths.ts";
import { rewritingRefused } from "../../workspace/rewriting.ts";
import { spanToRange } from "../convert.ts";
import { toRenameEdit } from "../renameEdit.ts";
import { ErrorCode } from "../values.ts";
import type { Feature, FeatureContext } from "./feature.ts";
import { type Place, placesAt } from "./place.ts";

export const rename: Feature = (context) => ({
  "textDocument/prepareRename": (params: TextDocumentPositionParams, token) =>
    prepare(context, params, token),
  "textDocument/rename": (params: RenameParams, token) => answer(context, params, token),
});

async function prepare(
  context: FeatureContext,
  params: TextDocumentPositionParams,
  token: CancellationToken,
): Promise<PrepareRenameResult | null> {
  const found = targetAt(await placesAt(context, params, token));
  if (!found) return null;
  const { target, lines } = found;
  return { range: spanToRange(target.span, lines), placeholder: target.name };
}

type PlaceAt = Place & { readonly offset: number };

function targetAt(
  places: readonly PlaceAt[],
):
  | { readonly target: RenameTarget; readonly guide: GuideState; readonly lines: Place["lines"] }
  | undefined {
  for (const { guide, uri, list, offset, lines } of places) {
    const target = list
      ? renameTargetInList(guide, list, offset)
      : renameTarget(guide, uri, offset);
    if (target && "problem" in target) throw refusal(target.problem);
    if (target) return { target, guide, lines };
  }
  return undefined;
}

async function answer(
  context: FeatureContext,
  params: RenameParams,
  token: CancellationToken,
): Promise<WorkspaceEdit | null> {
  const { service } = context;
  const uri = canonicalUri(params.textDocument.uri);
  const first = targetAt(await placesAt(context, params, token));
  if (!first) return null;
  const version = service.version(uri);
  const others = await otherGuides(context, first.target);
  const found = targetAt(await placesAt(context, params, token));
  if (!found || service.version(uri) !== version) {
    throw new ResponseError(
      ErrorCode.ContentModified,
      "The text has changed meanwhile. Try again.",
    );
  }
  const to = params.newName.trim();
  const edits = [
    ...editsIn(found.guide, found.target, to),
    ...sharing(found.target, [...service.guides(), ...others.guides()], found.guide).flatMap(
      ([guide, target]) => editsIn(guide, target, to),
    ),
  ];
  await refuseUnwritable(edits, service);
  return toRenameEdit(edits, [service, others], context.client);
}

/** Guides on the list of the part that nobody follows, read for this once. */
async function otherGuides(context: FeatureContext, target: RenameTarget): Promise<Service> {
  const apart = context.service.apart();
  if (target.kind !== "part") return apart;
  const list = target.part.list.uri;
  for (const guide of await context.guidesNaming((uri) => uri === list, list)) {
    if (!context.service.follows(guide)) apart.follow(guide);
  }
  await apart.settle();
  return apart;
}

/** The target as each other guide has it that shares it. */
function sharing(
  target: RenameTarget,
  guides: readonly GuideState[],
  own: GuideState,
): readonly (readonly [GuideState, RenameTarget])[] {
  if (target.kind !== "part") return [];
  return guides.flatMap((guide) => {
    const part = guide === own ? undefined : samePart(guide, target.part);
    return part ? [[guide, { ...target, part }] as const] : [];
  });
}

function editsIn(guide: GuideState, target: RenameTarget, to: string): readonly RenameEdit[] {
  const renamed = renameIn(guide, target, to);
  if ("problem" in renamed) throw refusal(renamed.problem);
  return renamed.edits;
}

async function refuseUnwritable(edits: readonly RenameEdit[], service: Service): Promise<void> {
  for (const uri of new Set(edits.map((edit) => edit.uri))) {
    const problem = await service.rewriteProblem(uri);
    if (problem) throw refusal(rewritingRefused(uri, problem));
  }
}

/** The editor shows the message where the new name is typed. */
function refusal(message: string): ResponseError<void> {
  return new ResponseError(ErrorCode.RequestFailed, message);
}
