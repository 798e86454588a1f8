/** `kitquill compare`: what changed between two parts lists. */
import { compareLists } from "../model/compare/compareLists.ts";
import { choice, readArguments, UsageError } from "./arguments.ts";
import { formatChanges } from "./formats/changes.ts";
import { readList } from "./readList.ts";
import type { ExitCode } from "./run.ts";
import type { Terminal } from "./terminal.ts";

const OPTIONS = { format: "string", help: "boolean" } as const;

export async function compare(
  argv: readonly string[],
  terminal: Terminal,
  cwd: string,
): Promise<ExitCode> {
  const args = readArguments(argv, OPTIONS);
  const [before, after, more] = args.positionals;
  if (before === undefined || after === undefined) {
    throw new UsageError("`compare` needs two parts lists: the old one and the new one.");
  }
  if (more !== undefined) {
    throw new UsageError(`\`compare\` takes two parts lists; \`${more}\` is too many.`);
  }
  const format = choice(args, "format", ["text", "json", "markdown"]);
  const old = await readList(before, cwd, terminal);
  const fresh = await readList(after, cwd, terminal);
  const changes = compareLists(old, fresh);
  terminal.out(formatChanges(changes, { before, after }, format));
  const { added, removed, changed, renumbered, hardware } = changes;
  const found = [added, removed, changed, renumbered, hardware].some(({ length }) => length > 0);
  return found ? 1 : 0;
}
