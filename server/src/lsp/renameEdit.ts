/** The edits of a rename as one edit of the workspace, annotated so that the editor can preview it. */
import type {
  AnnotatedTextEdit,
  ChangeAnnotation,
  ClientCapabilities,
  TextDocumentEdit,
  TextEdit,
  WorkspaceEdit,
} from "vscode-languageserver";
import type { RenameEdit } from "../features/rename/edit.ts";
import type { Service } from "../service.ts";
import { spanToRange } from "./convert.ts";

const GROUPS: Readonly<Record<RenameEdit["kind"], string>> = {
  mark: "In marks",
  prose: "In the text",
  figure: "In figures",
  "front matter": "In the front matter",
  list: "In the parts list",
};

/** `services` know the texts that the edits count in. An edit that several guides make comes once. */
export function toRenameEdit(
  edits: readonly RenameEdit[],
  services: readonly Service[],
  client: ClientCapabilities,
): WorkspaceEdit {
  const annotates = client.workspace?.workspaceEdit?.changeAnnotationSupport !== undefined;
  const byFile = new Map<string, Map<string, RenameEdit>>();
  for (const edit of edits) {
    const file = byFile.get(edit.uri) ?? new Map<string, RenameEdit>();
    file.set(`${edit.span.start}-${edit.span.end}`, edit);
    byFile.set(edit.uri, file);
  }
  const documentChanges = [...byFile].map(([uri, file]): TextDocumentEdit => {
    const lines = services.map((service) => service.lines(uri)).find((one) => one !== undefined)!;
    const sorted = [...file.values()].sort((a, b) => a.span.start - b.span.start);
    return {
      textDocument: { uri, version: services[0]!.version(uri) ?? null },
      edits: sorted.map(({ span, text, kind }): TextEdit | AnnotatedTextEdit => ({
        range: spanToRange(span, lines),
        newText: text,
        ...(annotates && { annotationId: kind }),
      })),
    };
  });
  return { documentChanges, ...(annotates && { changeAnnotations: annotationsOf(edits) }) };
}

function annotationsOf(edits: readonly RenameEdit[]): Record<string, ChangeAnnotation> {
  const kinds = new Set(edits.map(({ kind }) => kind));
  return Object.fromEntries(
    [...kinds].map((kind) => [kind, { label: GROUPS[kind], needsConfirmation: false }]),
  );
}
