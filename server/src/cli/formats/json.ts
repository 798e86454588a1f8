/** The report as JSON, for scripts. */
import { count } from "../../checks/count.ts";
import { distinctFindings, type Place, type Report } from "../report.ts";

/** One JSON document; field names and their order are a contract with those who read it. */
export function formatJson(report: Report): string {
  const findings = distinctFindings(report);
  const json = {
    files: report.guides.map(({ file, steps, parts, findings }) => ({
      file,
      steps,
      parts,
      findings: findings.map(({ code, severity, message, fixable, related, ...rest }) => ({
        code,
        severity,
        message,
        ...place(rest),
        fixable,
        related: related.map((one) => ({ message: one.message, ...place(one) })),
      })),
    })),
    summary: {
      files: report.guides.length,
      errors: count(findings, "error"),
      warnings: count(findings, "warning"),
      ...(report.fixed !== undefined && { fixed: report.fixed }),
    },
  };
  return `${JSON.stringify(json, undefined, 2)}\n`;
}

function place({ file, line, column, endLine, endColumn }: Place): Place {
  return { file, line, column, endLine, endColumn };
}
