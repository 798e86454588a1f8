/** Hands the arguments to the command they name, which is loaded then: none waits for the others. */
import { version } from "../../../package.json";
import { nearestWord } from "../text/nearest.ts";
import { UsageError } from "./arguments.ts";
import { helpOn, isTopic, type Topic } from "./help.ts";
import type { Terminal } from "./terminal.ts";

/** 0: nothing serious found. 1: errors, or too many warnings. 2: unusable input or arguments. */
export type ExitCode = 0 | 1 | 2;

type Command = (args: readonly string[], terminal: Terminal, cwd: string) => Promise<ExitCode>;

const COMMANDS: Readonly<Record<Exclude<Topic, "kitquill">, () => Promise<Command>>> = {
  check: async () => (await import("./check.ts")).check,
  compare: async () => (await import("./compare.ts")).compare,
  list: async () => (await import("./list.ts")).list,
  match: async () => (await import("./match.ts")).match,
  publish: async () => (await import("./publish.ts")).publish,
  narration: async () => (await import("./narration.ts")).narration,
  start: async () => (await import("./start.ts")).start,
  adopt: async () => (await import("./adopt.ts")).adopt,
  explain: async () => (await import("./explain.ts")).explain,
  lsp: async () => (await import("./lsp.ts")).lsp,
};

/** Runs one command; whatever happens ends in an exit code. */
export async function run(
  args: readonly string[],
  terminal: Terminal,
  cwd: string,
): Promise<ExitCode> {
  try {
    return await dispatch(args, terminal, cwd);
  } catch (error) {
    if (error instanceof UsageError) {
      terminal.err(`kitquill: ${error.message}\n`);
    } else {
      const details = error instanceof Error ? error.stack : String(error);
      terminal.err(`kitquill: something went wrong inside. Please report this:\n${details}\n`);
    }
    return 2;
  }
}

async function dispatch(args: readonly string[], terminal: Terminal, cwd: string) {
  const [first, ...rest] = args;
  if (first === "--version") {
    terminal.out(`${version}\n`);
    return 0;
  }
  const topic = first === "help" ? (rest[0] ?? "kitquill") : (first ?? "kitquill");
  if (first === "help" || first === "--help" || first === "-h" || first === undefined) {
    const wanted = topic.startsWith("-") ? "kitquill" : topic;
    if (!isTopic(wanted)) throw unknown(wanted);
    const help = await helpOn(wanted);
    if (first === undefined) terminal.err(help);
    else terminal.out(help);
    return first === undefined ? 2 : 0;
  }
  if (!Object.hasOwn(COMMANDS, first)) throw unknown(first);
  if (rest.includes("--help") || rest.includes("-h")) {
    terminal.out(await helpOn(first as Topic));
    return 0;
  }
  const command = await COMMANDS[first as keyof typeof COMMANDS]();
  return command(rest, terminal, cwd);
}

function unknown(word: string): UsageError {
  const names = Object.keys(COMMANDS);
  const meant = nearestWord(word, [...names, "help", "--help", "--version"]);
  const hint = meant ? `Did you mean \`${meant}\`?` : `Commands: ${names.join(", ")}.`;
  const kind = word.startsWith("-") ? "an option" : "a command";
  return new UsageError(`\`${word}\` is not ${kind}. ${hint}`);
}
