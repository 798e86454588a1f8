/** `kitquill explain`: what a finding means. */
import { PAGES } from "virtual:check-pages";
import { nearestWord } from "../text/nearest.ts";
import { readArguments, UsageError } from "./arguments.ts";
import type { ExitCode } from "./run.ts";
import type { Terminal } from "./terminal.ts";

export async function explain(argv: readonly string[], terminal: Terminal): Promise<ExitCode> {
  const { positionals } = readArguments(argv, { help: "boolean" });
  const [code, ...more] = positionals;
  if (more.length > 0) throw new UsageError("`explain` takes one code.");
  terminal.out(code === undefined ? everyCheck() : pageOf(code));
  return 0;
}

function pageOf(code: string): string {
  if (Object.hasOwn(PAGES, code)) return PAGES[code]!;
  const meant = nearestWord(code, Object.keys(PAGES));
  const hint = meant ? `Did you mean \`${meant}\`?` : "`kitquill explain` lists them all.";
  throw new UsageError(`No check has the code \`${code}\`. ${hint}`);
}

/** Each code with the sentence under its page's title. */
function everyCheck(): string {
  const width = Math.max(...Object.keys(PAGES).map(({ length }) => length));
  const lines = Object.entries(PAGES).map(
    ([code, page]) => `${code.padEnd(width)}  ${page.split("\n")[2]}`,
  );
  return `${lines.join("\n")}\n`;
}
