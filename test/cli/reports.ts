/** Reports and a terminal for tests of the output formats. */
import type { Report, ReportedFinding } from "../../server/src/cli/report.ts";

export function finding(over: Partial<ReportedFinding> = {}): ReportedFinding {
  return {
    code: "duplicate-part",
    severity: "error",
    message: "R7 is fitted twice.",
    file: "kits/heron/guide.md",
    line: 12,
    column: 9,
    endLine: 12,
    endColumn: 16,
    fixable: false,
    related: [],
    sourceLine: "1. Fit [R5–R8] flat.",
    ...over,
  };
}

export function report(...findings: readonly ReportedFinding[]): Report {
  const parts = { listed: 3, fitted: 2, missing: 1 };
  const guide = { file: "kits/heron/guide.md", steps: 5, parts, findings };
  return { guides: [guide], problems: [], fixed: undefined };
}

/** Shows colours as `<red:text>`. */
export const painted = { paint: (colour: string, text: string) => `<${colour}:${text}>` };
export const plain = { paint: (_: string, text: string) => text };
