/**
 * The report as GitHub workflow commands, which show findings beside the lines of a pull request.
 * Escapes as in actions/toolkit, packages/core/src/command.ts.
 */
import { distinctFindings, type Report, type ReportedFinding } from "../report.ts";
import { printable } from "../terminal.ts";
import { summary } from "./text.ts";

const COMMANDS = {
  error: "error",
  warning: "warning",
  information: "notice",
  hint: "notice",
} as const;

export function formatGithub(report: Report): string {
  const commands = distinctFindings(report).map(command);
  return `${commands.join("")}${summary(report)}\n`;
}

function command(finding: ReportedFinding): string {
  const { file, line, endLine, column, endColumn, code, severity, message } = finding;
  const properties = Object.entries({
    file,
    line,
    endLine,
    // GitHub refuses columns of a place that spans lines.
    ...(line === endLine && { col: column, endColumn }),
    title: code,
  });
  const listed = properties.map(([name, value]) => `${name}=${escapeProperty(String(value))}`);
  return `::${COMMANDS[severity]} ${listed.join(",")}::${escapeData(message)}\n`;
}

function escapeData(text: string): string {
  return printable(text.replaceAll("\r\n", "\n")).replaceAll("%", "%25").replaceAll("\n", "%0A");
}

function escapeProperty(text: string): string {
  return escapeData(text).replaceAll(":", "%3A").replaceAll(",", "%2C");
}
