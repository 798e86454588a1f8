/** `kitquill check`: checks guides, and with `--fix` mends what can be mended safely. */

import { count } from "../checks/count.ts";
import { type Arguments, choice, readArguments, wholeNumber } from "./arguments.ts";
import { changedMeanwhile, checkGuide, reportOf } from "./checking.ts";
import { fixGuide } from "./fix.ts";
import { formatGithub } from "./formats/github.ts";
import { formatJson } from "./formats/json.ts";
import { formatSarif } from "./formats/sarif.ts";
import { counted, formatText } from "./formats/text.ts";
import { diskFor, findInputs, type Input } from "./inputs.ts";
import { distinctFindings, type GuideReport, type Report } from "./report.ts";
import type { ExitCode } from "./run.ts";
import { shownPath } from "./shownPath.ts";
import type { Terminal } from "./terminal.ts";

const FORMATS = {
  text: formatText,
  json: formatJson,
  sarif: formatSarif,
  github: formatGithub,
} as const;

const OPTIONS = {
  format: "string",
  "max-warnings": "string",
  fix: "boolean",
  "lists-outside": "boolean",
  help: "boolean",
} as const;

export async function check(
  argv: readonly string[],
  terminal: Terminal,
  cwd: string,
): Promise<ExitCode> {
  const args = readArguments(argv, OPTIONS);
  const format = choice(args, "format", ["text", "json", "sarif", "github"]);
  const maxWarnings = wholeNumber(args, "max-warnings");
  const report = await checkAll(args, terminal, cwd);
  terminal.progress(undefined);
  terminal.out(FORMATS[format](report, terminal));
  for (const problem of report.problems) terminal.err(`kitquill: ${problem}\n`);
  if (report.problems.length > 0) return 2;
  const findings = distinctFindings(report);
  const warnings = count(findings, "warning");
  const tooMany = maxWarnings !== undefined && warnings > maxWarnings;
  if (tooMany) {
    terminal.err(`kitquill: ${counted(warnings, "warning")}; ${maxWarnings} are allowed.\n`);
  }
  return tooMany || count(findings, "error") > 0 ? 1 : 0;
}

async function checkAll(args: Arguments, terminal: Terminal, cwd: string): Promise<Report> {
  const names = args.positionals.length > 0 ? args.positionals : ["."];
  const inputs = await findInputs(names, cwd, (found) =>
    terminal.progress(`Looking for guides: ${found} found`),
  );
  const guides: GuideReport[] = [];
  const problems = [...inputs.problems];
  let fixed = 0;
  for (const [index, input] of inputs.guides.entries()) {
    const shown = shownPath(input.uri, cwd);
    terminal.progress(`Checking ${index + 1} of ${inputs.guides.length}: ${shown}`);
    if (args.has("fix")) {
      const result = await fixGuide(input, args.has("lists-outside"), cwd);
      fixed += result.fixed;
      problems.push(...result.problems);
    }
    const report = await reportOn(input, args.has("lists-outside"), cwd);
    if (report) guides.push(report);
    else problems.push(changedMeanwhile(shown));
  }
  return { guides, problems, fixed: args.has("fix") ? fixed : undefined };
}

async function reportOn(input: Input, listsOutside: boolean, cwd: string) {
  const checked = await checkGuide(input, diskFor(input, listsOutside), listsOutside);
  return checked && reportOf(checked, cwd);
}
