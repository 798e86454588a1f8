/** `kitquill compare`: what changed between two parts lists, and what that touches in a guide. */
import { compareLists, type ListChanges } from "../model/compare/compareLists.ts";
import { MAX_FILE_BYTES } from "../workspace/files.ts";
import { type Arguments, choice, readArguments, UsageError } from "./arguments.ts";
import { formatChanges } from "./formats/changes.ts";
import { committed } from "./git.ts";
import { type NamedList, readNamedList } from "./readList.ts";
import type { ExitCode } from "./run.ts";
import type { Terminal } from "./terminal.ts";

const OPTIONS = {
  format: "string",
  guide: "string",
  "old-rev": "string",
  "lists-outside": "boolean",
  help: "boolean",
} as const;

export async function compare(
  argv: readonly string[],
  terminal: Terminal,
  cwd: string,
): Promise<ExitCode> {
  const args = readArguments(argv, OPTIONS);
  const format = choice(args, "format", ["text", "json", "markdown"]);
  const { before, after, names } = await readBoth(args, terminal, cwd);
  const guide = args.value("guide");
  if (guide === undefined) {
    const changes = compareLists(before.list, after.list);
    terminal.out(formatChanges(changes, names, format));
    return isChanged(changes) ? 1 : 0;
  }
  // With it comes all that reads and checks guides.
  const { reviseNamed } = await import("./reviseGuide.ts");
  const { formatRevision } = await import("./formats/revision.ts");
  const revised = await reviseNamed(guide, before, after, cwd, args.has("lists-outside"));
  terminal.out(formatRevision(revised, names, format, cwd, terminal));
  const found = revised.touched.filter(({ findings }) => findings.length > 0).length;
  if (format === "markdown" && found > 0) {
    terminal.err(
      `kitquill: ${found} ${found === 1 ? "place" : "places"} of the guide must be put right before this note is sent; the text format lists them.\n`,
    );
  }
  return isChanged(revised.changes) ? 1 : 0;
}

interface Both {
  readonly before: NamedList;
  readonly after: NamedList;
  readonly names: { readonly before: string; readonly after: string };
}

/** OLD and NEW, or with a revision of git one list as it was then and as it is. */
async function readBoth(args: Arguments, terminal: Terminal, cwd: string): Promise<Both> {
  const revision = args.value("old-rev");
  const [first, second, third] = args.positionals;
  const most = revision === undefined ? [first, second, third] : [first, first, second];
  const [old, fresh, more] = most;
  if (old === undefined || fresh === undefined) {
    throw new UsageError(
      revision === undefined
        ? "`compare` needs two parts lists: the old one and the new one."
        : "`compare --old-rev` needs a parts list: the new one.",
    );
  }
  if (more !== undefined) {
    const takes = revision === undefined ? "two parts lists" : "one parts list with `--old-rev`";
    throw new UsageError(`\`compare\` takes ${takes}; \`${more}\` is too many.`);
  }
  const bytesAt =
    revision === undefined
      ? undefined
      : (path: string) => committed(path, revision, MAX_FILE_BYTES);
  return {
    before: await readNamedList(old, cwd, terminal, bytesAt),
    after: await readNamedList(fresh, cwd, terminal),
    names: { before: revision === undefined ? old : `${old} (${revision})`, after: fresh },
  };
}

function isChanged({ added, removed, changed, renumbered, hardware }: ListChanges): boolean {
  return [added, removed, changed, renumbered, hardware].some(({ length }) => length > 0);
}
