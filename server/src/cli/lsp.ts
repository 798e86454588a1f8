/** `kitquill lsp --stdio`: serves an editor. */
import { readArguments, UsageError } from "./arguments.ts";
import type { ExitCode } from "./run.ts";

/** Resolves when the editor has ended the session. */
export async function lsp(args: readonly string[]): Promise<ExitCode> {
  const given = readArguments(args, { stdio: "boolean", help: "boolean" });
  if (given.positionals.length > 0) {
    throw new UsageError(`\`lsp\` takes no file: the editor names them.`);
  }
  if (!given.has("stdio")) throw new UsageError("Write `kitquill lsp --stdio`.");
  const { startStdio } = await import("../main-node.ts");
  startStdio();
  return 0;
}
