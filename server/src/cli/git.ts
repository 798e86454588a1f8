/** Earlier states of a file, from the user's git. */
import { type ExecFileException, execFile } from "node:child_process";
import { basename, dirname } from "node:path";
import { UsageError } from "./arguments.ts";

/** Nothing is fetched and nobody is asked, whatever the repository's settings say. */
const QUIET = { GIT_NO_LAZY_FETCH: "1", GIT_TERMINAL_PROMPT: "0", GIT_ALLOW_PROTOCOL: "" };

/** The bytes of the file as it was committed in the revision. Throws a UsageError where git has none. */
export async function committed(path: string, revision: string, maxBytes: number) {
  // git would take it for an option.
  if (revision === "" || revision.startsWith("-")) {
    throw new UsageError(`\`${revision}\` is no revision of git.`);
  }
  const args = ["-C", dirname(path), "cat-file", "blob", `${revision}:./${basename(path)}`];
  const env = { ...process.env, ...QUIET };
  return new Promise<Uint8Array>((resolve, reject) => {
    const options = { encoding: "buffer", maxBuffer: maxBytes, env } as const;
    execFile("git", args, options, (error, stdout, stderr) => {
      if (error) reject(new UsageError(problem(error, stderr.toString(), path, revision)));
      else resolve(stdout);
    });
  });
}

function problem(error: ExecFileException, said: string, path: string, revision: string) {
  const what = `\`${basename(path)}\` cannot be taken from revision \`${revision}\`: `;
  if (error.code === "ENOENT") return `${what}there is no git on this machine.`;
  if (error.code === "ERR_CHILD_PROCESS_STDIO_MAXBUFFER") return `${what}it is too large.`;
  return `${what}git says “${
    said
      .trim()
      .replace(/^fatal: /, "")
      .split("\n")[0]
  }”.`;
}
