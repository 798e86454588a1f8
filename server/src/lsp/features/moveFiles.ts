/**
 * Keeps `parts` and `pages` of all guides true when files are moved or renamed in the editor, and the
 * addresses of pictures in guides that are open, that move, or that name a file which does.
 */
import type { RenameFilesParams, TextDocumentEdit, WorkspaceEdit } from "vscode-languageserver";
import { linksOf } from "../../features/links.ts";
import type { Page } from "../../model/guide.ts";
import type { GuideState } from "../../model/guideState.ts";
import { pathEdits, pictureEdits } from "../../workspace/movedPaths.ts";
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
      for (const page of guide.pages) {
        const change = changeOf(guide, page, movedTo, one);
        // The file is moved whether or not the guide can be changed.
        if (change && !(await service.rewriteProblem(page.uri))) changes.push(change);
      }
    }
  }
  return changes.length > 0 ? { documentChanges: changes } : null;
}

function changeOf(
  guide: GuideState,
  { uri, text }: Page,
  movedTo: (uri: string) => string,
  service: FeatureContext["service"],
): TextDocumentEdit | undefined {
  const pictures = [...linksOf(guide, uri)].filter((link) => link.to === "picture");
  const edits = [
    ...(uri === guide.pages[0]!.uri ? pathEdits(uri, text, guide.frontMatter, movedTo) : []),
    ...pictureEdits(uri, pictures, movedTo),
  ];
  const lines = service.lines(uri);
  if (edits.length === 0 || !lines) return undefined;
  return {
    textDocument: { uri, version: service.version(uri) ?? null },
    edits: edits.map(({ span, text: newText }) => ({ range: spanToRange(span, lines), newText })),
  };
}
