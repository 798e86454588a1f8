/** The report as text for people: findings by file with their source lines, then a summary. */
import type { Severity } from "../../checks/check.ts";
import { count } from "../../checks/count.ts";
import { distinctFindings, type Report, type ReportedFinding } from "../report.ts";
import { type Colour, printable, type Terminal } from "../terminal.ts";
import { excerpt } from "./excerpt.ts";

const COLOURS: Readonly<Record<Severity, Colour>> = {
  error: "red",
  warning: "yellow",
  information: "blue",
  hint: "dim",
};

/** As settings and front matter write it. */
const shown = (severity: Severity) => (severity === "information" ? "info" : severity);

export function formatText(report: Report, { paint }: Pick<Terminal, "paint">): string {
  const findings = distinctFindings(report);
  let text = "";
  for (const [index, finding] of findings.entries()) {
    if (index > 0 && findings[index - 1]!.file !== finding.file) text += "\n";
    text += oneFinding(finding, paint);
  }
  if (report.guides.length === 0) return text;
  return `${text}${text && "\n"}${paint("bold", summary(report))}\n`;
}

function oneFinding(finding: ReportedFinding, paint: Terminal["paint"]): string {
  const { file, line, column, severity, code, message, related } = finding;
  const head = `${paint("bold", `${printable(file)}:${line}:${column}`)} ${paint(COLOURS[severity], shown(severity))} ${code} ${printable(message)}\n`;
  const also = related.map(
    (one) =>
      `  ${paint("dim", `see ${printable(one.file)}:${one.line}:${one.column}`)} ${printable(one.message)}\n`,
  );
  return `${head}${excerpt(finding)}${also.join("")}`;
}

/** One sentence: what was checked and what was found. */
export function summary(report: Report): string {
  const findings = distinctFindings(report);
  const steps = report.guides.reduce((sum, guide) => sum + guide.steps, 0);
  const counts = [
    counted(count(findings, "error"), "error"),
    counted(count(findings, "warning"), "warning"),
    counted(count(findings, "information") + count(findings, "hint"), "note"),
  ];
  const found = findings.length === 0 ? "nothing found" : counts.filter((one) => one).join(", ");
  const fixed = report.fixed === undefined ? "" : ` ${report.fixed} fixed.`;
  const guides = counted(report.guides.length, "guide") || "No guide";
  return `${guides} checked, ${counted(steps, "step") || "no steps"}: ${found}.${fixed}`;
}

/** A number with its noun; empty for none. */
export function counted(number: number, noun: string): string {
  return number === 0 ? "" : `${number} ${noun}${number === 1 ? "" : "s"}`;
}
