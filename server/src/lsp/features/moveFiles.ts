/** Keeps `parts` and `pages` of all guides true when files are moved or renamed in the editor. */
import type { RenameFilesParams, TextDocumentEdit, WorkspaceEdit } from "vscode-languageserver";
import type { GuideState } from "../../model/guideState.ts";
import { pathEdits } from "../../workspace/movedPaths.ts";
import { canonicalUri, isInside } from "../../workspace/paths.ts";
import { spanToRange } from "../convert.ts";
import type { Feature, FeatureContext } from "./feature.ts";

export const moveFiles: Feature = (context) => ({
  "workspace/willRenameFiles": (params: RenameFilesParams) => answer(context, params),
});

async function answer(
  context: FeatureContext,
  { files }: RenameFilesParams,
): Promise<WorkspaceEdit | null> {
  const moves = files.map(({ oldUri, newUri }) => ({
    from: canonicalUri(oldUri),
    to: canonicalUri(newUri),
  }));
  const movedTo = (uri: string) => {
    for (const { from, to } of moves) {
      if (uri === from) return to;
      if (isInside(uri, from)) return to + uri.slice(from.length);
    }
    return uri;
  };
  const { service } = context;
  const apart = service.apart();
  const isMoved = (uri: string) => movedTo(uri) !== uri;
  for (const guide of await context.guidesNaming(isMoved, moves[0]!.from)) {
    if (!service.follows(guide)) apart.follow(guide);
  }
  await apart.settle();
  await context.caughtUp();
  const changes: TextDocumentEdit[] = [];
  for (const one of [service, apart]) {
    for (const guide of one.guides()) {
      const change = changeOf(guide, movedTo, one);
      // The file is moved whether or not the guide can be changed.
      if (change && !(await service.rewriteProblem(change.textDocument.uri))) changes.push(change);
    }
  }
  return changes.length > 0 ? { documentChanges: changes } : null;
}

function changeOf(
  guide: GuideState,
  movedTo: (uri: string) => string,
  service: FeatureContext["service"],
): TextDocumentEdit | undefined {
  const { uri, text } = guide.pages[0]!;
  const edits = pathEdits(uri, text, guide.frontMatter, movedTo);
  const lines = service.lines(uri);
  if (edits.length === 0 || !lines) return undefined;
  return {
    textDocument: { uri, version: service.version(uri) ?? null },
    edits: edits.map(({ span, text: newText }) => ({ range: spanToRange(span, lines), newText })),
  };
}
