/** The report as SARIF 2.1.0 (OASIS standard), for code scanning services. */
import { version } from "../../../../package.json";
import { CHECKS } from "../../checks/all.ts";
import type { Severity } from "../../checks/check.ts";
import { distinctFindings, type Place, type Report, type ReportedFinding } from "../report.ts";
import { uriReference } from "../shownPath.ts";

const SCHEMA =
  "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json";

/** SARIF 3.27.10: the levels that a result can have. */
const LEVELS: Readonly<Record<Severity, "error" | "warning" | "note">> = {
  error: "error",
  warning: "warning",
  information: "note",
  hint: "note",
};

export function formatSarif(report: Report): string {
  const findings = distinctFindings(report);
  const rules = rulesFor(findings);
  const run = {
    tool: { driver: { name: "Kitquill", version, rules } },
    invocations: [
      {
        executionSuccessful: report.problems.length === 0,
        toolExecutionNotifications: report.problems.map((text) => ({
          level: "error",
          message: { text },
        })),
      },
    ],
    columnKind: "utf16CodeUnits",
    results: findings.map((finding) => result(finding, rules)),
  };
  return `${JSON.stringify({ $schema: SCHEMA, version: "2.1.0", runs: [run] }, undefined, 2)}\n`;
}

/** All checks, and whatever else a finding names. */
function rulesFor(findings: readonly ReportedFinding[]) {
  const rules = CHECKS.map(({ meta }) => ({
    id: meta.code,
    shortDescription: { text: meta.summary },
    help: { text: `${meta.summary} Source of the rule: ${meta.source}.` },
    defaultConfiguration: { level: LEVELS[meta.severity] },
    properties: { tags: [...meta.tags] as string[] },
  }));
  const known = new Set(rules.map(({ id }) => id));
  for (const { code } of findings) {
    if (known.has(code)) continue;
    known.add(code);
    const text = "A note on the report itself.";
    rules.push({
      id: code,
      shortDescription: { text },
      help: { text },
      defaultConfiguration: { level: "note" },
      properties: { tags: [] },
    });
  }
  return rules;
}

function result(finding: ReportedFinding, rules: readonly { readonly id: string }[]) {
  return {
    ruleId: finding.code,
    ruleIndex: rules.findIndex(({ id }) => id === finding.code),
    level: LEVELS[finding.severity],
    message: { text: finding.message },
    locations: [location(finding)],
    ...(finding.related.length > 0 && {
      relatedLocations: finding.related.map((one, index) => ({
        id: index + 1,
        message: { text: one.message },
        ...location(one),
      })),
    }),
  };
}

function location({ file, line, column, endLine, endColumn }: Place) {
  return {
    physicalLocation: {
      artifactLocation: { uri: uriReference(file) },
      region: { startLine: line, startColumn: column, endLine, endColumn },
    },
  };
}
