/** Marks that a plain text is given, as an edit that the author confirms mark by mark. */
import type { ChangeAnnotation, ClientCapabilities, WorkspaceEdit } from "vscode-languageserver";
import { listNames } from "../checks/words.ts";
import type { Adoption, Proposal } from "../features/adopt/adopt.ts";
import type { Service } from "../service.ts";
import { spanToRange } from "./convert.ts";
import type { SentMark } from "./protocol.ts";

const GROUPS: Readonly<Record<Proposal["form"], string>> = {
  "told to fit": "The text says to fit them",
  "begins the step": "They begin their line",
  "names the kind": "They follow their kind",
  table: "They are in a table",
  "all of a kind": "All of a kind are meant",
};

/** So many of the parts that are left are named. */
const MOST_LEFT = 12;

/** What stays for the author to mark; empty where nothing does. */
export function leftToAuthor({ left }: Adoption): string {
  if (left.length === 0) return "";
  return `Left to you: ${listNames(
    left.map(({ part }) => part),
    MOST_LEFT,
  )}.`;
}

/** In document order; each replaces what it stands round. */
export function marksOf({ proposals }: Adoption, service: Service): SentMark[] {
  return proposals.flatMap(({ uri, span, mark, form }) => {
    const lines = service.lines(uri);
    const text = span.start === span.end ? ` ${mark}` : mark;
    return lines ? [{ uri, range: spanToRange(span, lines), text, why: GROUPS[form] }] : [];
  });
}

/** Needs confirmation where the client can ask for it. */
export function toAdoptionEdit(
  adoption: Adoption,
  service: Service,
  client: ClientCapabilities,
): WorkspaceEdit {
  const annotates = client.workspace?.workspaceEdit?.changeAnnotationSupport !== undefined;
  const marks = marksOf(adoption, service);
  const documentChanges = [...new Set(marks.map(({ uri }) => uri))].map((uri) => ({
    textDocument: { uri, version: service.version(uri) ?? null },
    edits: marks
      .filter((one) => one.uri === uri)
      .map(({ range, text, why }) => ({
        range,
        newText: text,
        ...(annotates && { annotationId: why }),
      })),
  }));
  if (!annotates) return { documentChanges };
  const description = leftToAuthor(adoption);
  const annotation = (label: string): ChangeAnnotation => ({
    label,
    needsConfirmation: true,
    ...(description && { description }),
  });
  const reasons = new Set(marks.map(({ why }) => why));
  return {
    documentChanges,
    changeAnnotations: Object.fromEntries([...reasons].map((why) => [why, annotation(why)])),
  };
}
