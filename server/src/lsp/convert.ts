/** The border between the analysis, which counts offsets, and the protocol, which counts lines. */
import type {
  CodeDescription,
  Diagnostic,
  Location as LspLocation,
  Position as LspPosition,
  Range,
  TextDocumentEdit,
  WorkspaceEdit,
} from "vscode-languageserver";
import type { Fix, Severity } from "../checks/check.ts";
import { CODES } from "../checks/codes.ts";
import type { Diagnosis, Location, Service } from "../service.ts";
import type { LineIndex, Position } from "../text/lines.ts";
import type { Span } from "../text/span.ts";
import { DiagnosticSeverity } from "./values.ts";

const SEVERITIES: Readonly<Record<Severity, 1 | 2 | 3 | 4>> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  information: DiagnosticSeverity.Information,
  hint: DiagnosticSeverity.Hint,
};

export function toPosition({ line, column }: Position): LspPosition {
  return { line, character: column };
}

export function fromPosition({ line, character }: LspPosition): Position {
  return { line, column: character };
}

export function toRange(place: Pick<Location, "start" | "end">): Range {
  return { start: toPosition(place.start), end: toPosition(place.end) };
}

export function spanToRange(span: Span, lines: LineIndex): Range {
  return toRange(lines.range(span));
}

export function rangeToSpan(range: Range, lines: LineIndex): Span {
  const [start, end] = [range.start, range.end].map((at) => lines.offsetAt(fromPosition(at)));
  return { start: start!, end: Math.max(start!, end!) };
}

/** All that a file shows is sent at each change, and nearly all of it has been sent before. */
const SENT = new WeakMap<Diagnosis, Diagnostic>();

/** `explain` is the client's command that shows the page of a check; a code leads there. */
export function toDiagnostic(diagnosis: Diagnosis, explain: string | undefined): Diagnostic {
  const known = SENT.get(diagnosis);
  if (known) return known;
  const made = makeDiagnostic(diagnosis, explain);
  SENT.set(diagnosis, made);
  return made;
}

function makeDiagnostic(diagnosis: Diagnosis, explain: string | undefined): Diagnostic {
  const related = diagnosis.related.map((one) => ({
    location: { uri: one.uri, range: toRange(one) },
    message: one.message,
  }));
  return {
    range: toRange(diagnosis),
    severity: SEVERITIES[diagnosis.severity],
    code: diagnosis.code,
    ...(explain &&
      CODES.includes(diagnosis.code) && { codeDescription: pageOf(explain, diagnosis.code) }),
    source: "kitquill",
    message: diagnosis.message,
    ...(related.length > 0 && { relatedInformation: related }),
  };
}

function pageOf(explain: string, code: string): CodeDescription {
  return { href: `command:${explain}?${encodeURIComponent(JSON.stringify([code]))}` };
}

/** Places in files that are followed; one in another file is left out. */
export function toLocations(
  targets: readonly { readonly uri: string; readonly span: Span }[],
  service: Service,
): LspLocation[] {
  return targets.flatMap(({ uri, span }) => {
    const lines = service.lines(uri);
    return lines ? [{ uri, range: spanToRange(span, lines) }] : [];
  });
}

/** Edits for the texts as they stand; undefined when one of the files is not followed any more. */
export function toWorkspaceEdit(
  fix: Pick<Fix, "edits">,
  service: Service,
): WorkspaceEdit | undefined {
  const documentChanges: TextDocumentEdit[] = [];
  for (const { uri, edits } of fix.edits) {
    const lines = service.lines(uri);
    if (!lines) return undefined;
    documentChanges.push({
      textDocument: { uri, version: service.version(uri) ?? null },
      edits: edits.map(({ span, text }) => ({ range: spanToRange(span, lines), newText: text })),
    });
  }
  return { documentChanges };
}
