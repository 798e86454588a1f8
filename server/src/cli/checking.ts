/** Checks one guide through the service and reports what it finds. */
import { accountsFor } from "../model/accounting.ts";
import type { GuideState } from "../model/guideState.ts";
import { DEFAULT_SETTINGS, type Diagnosis, type Location, Service } from "../service.ts";
import type { LineIndex } from "../text/lines.ts";
import type { Files } from "../workspace/files.ts";
import type { Input } from "./inputs.ts";
import type { GuideReport, Place, ReportedFinding } from "./report.ts";
import { shownPath } from "./shownPath.ts";

/** A guide that has been checked. */
export interface Checked {
  readonly service: Service;
  readonly guide: GuideState;
  /** Of all files of the guide, in the order of files and places. */
  readonly diagnoses: readonly Diagnosis[];
}

/** Checks the guide afresh; undefined when the file is no guide any more. */
export async function checkGuide(
  input: Input,
  files: Files,
  listsOutside: boolean,
): Promise<Checked | undefined> {
  const service = new Service(files, {
    ...DEFAULT_SETTINGS,
    folders: [input.folder],
    listsOutsideWorkspace: listsOutside,
  });
  service.follow(input.uri);
  await service.settle();
  const guide = service.guidesOf(input.uri)[0];
  if (!guide) return undefined;
  const byFile = new Map(service.takeChanges().map(({ uri, diagnoses }) => [uri, diagnoses]));
  const diagnoses = filesOf(guide).flatMap((uri) => byFile.get(uri) ?? []);
  return { service, guide, diagnoses };
}

/** What is said where a guide is none any more when it is checked. */
export function changedMeanwhile(name: string): string {
  return `\`${name}\` was changed meanwhile and is no guide any more. Run the command again.`;
}

/** Pages in order, then the parts lists. */
export function filesOf(guide: GuideState): readonly string[] {
  return [...new Set([...guide.pages, ...guide.lists].map(({ uri }) => uri))];
}

/** The report on a checked guide, with paths as seen from `cwd`. */
export function reportOf({ service, guide, diagnoses }: Checked, cwd: string): GuideReport {
  const parts = guide.parts.filter((part) => part.fitted);
  const fitted = parts.filter((part) =>
    guide.uses(part).some((use) => accountsFor(use) && use.role !== "empty"),
  );
  return {
    file: shownPath(guide.pages[0]!.uri, cwd),
    steps: guide.stages.reduce((sum, stage) => sum + stage.steps.length, 0),
    parts: { listed: parts.length, fitted: fitted.length, missing: guide.missing.length },
    findings: diagnoses.map((diagnosis) => findingOf(diagnosis, service, cwd)),
  };
}

function findingOf(diagnosis: Diagnosis, service: Service, cwd: string): ReportedFinding {
  const { code, severity, message, related, uri, start, standsFor } = diagnosis;
  const text = service.text(uri) ?? "";
  return {
    code,
    severity,
    message,
    ...placeOf(diagnosis, cwd),
    fixable: diagnosis.fixes().length > 0,
    related: related.map((one) => ({ message: one.message, ...placeOf(one, cwd) })),
    sourceLine: lineText(text, service.lines(uri), start.line),
    ...(standsFor && { standsFor }),
  };
}

/** One-based, as people and other tools count. */
export function placeOf({ uri, start, end }: Location, cwd: string): Place {
  return {
    file: shownPath(uri, cwd),
    line: start.line + 1,
    column: start.column + 1,
    endLine: end.line + 1,
    endColumn: end.column + 1,
  };
}

function lineText(text: string, lines: LineIndex | undefined, line: number): string {
  if (!lines) return "";
  return text.slice(lines.lineStart(line), lines.lineStart(line + 1)).replace(/\r?\n?$/, "");
}
