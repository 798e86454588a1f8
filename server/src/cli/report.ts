/** What a check of guides found, in the form that all output formats share. */
import type { Counted } from "../checks/count.ts";

/** Lines and columns count from 1, columns in UTF-16 units; the end is exclusive. */
export interface Place {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
}

export interface ReportedFinding extends Place, Counted {
  readonly code: string;
  readonly message: string;
  readonly fixable: boolean;
  readonly related: readonly (Place & { readonly message: string })[];
  /** The line of the file where it begins, without its line end. */
  readonly sourceLine: string;
}

export interface GuideReport {
  readonly file: string;
  readonly steps: number;
  /** Parts the list supplies for fitting, those that a step fits, and those nothing settles. */
  readonly parts: { readonly listed: number; readonly fitted: number; readonly missing: number };
  readonly findings: readonly ReportedFinding[];
}

export interface Report {
  readonly guides: readonly GuideReport[];
  /** Input that could not be used. */
  readonly problems: readonly string[];
  /** Fixes applied; undefined when none were asked for. */
  readonly fixed: number | undefined;
}

/** All findings, files in the order they come up; what two guides on one list share comes once. */
export function distinctFindings(report: Report): readonly ReportedFinding[] {
  const byFile = new Map<string, Map<string, ReportedFinding>>();
  for (const { findings } of report.guides) {
    for (const finding of findings) {
      const { file, line, column, endLine, endColumn, code, message } = finding;
      const key = JSON.stringify([line, column, endLine, endColumn, code, message]);
      if (!byFile.has(file)) byFile.set(file, new Map());
      byFile.get(file)!.set(key, finding);
    }
  }
  return [...byFile.values()].flatMap((findings) => [...findings.values()]);
}
