/** Runs the command line as a real process, from a bundle made as the build makes it. */
import { spawn } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { pathToFileURL } from "node:url";
import { type BuildOptions, build } from "esbuild";

export interface Outcome {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

const ROOT = join(import.meta.dirname, "../..");

/** The command line, built into a folder of its own. */
export class Cli {
  readonly #folder = mkdtempSync(join(tmpdir(), "cli-"));
  readonly bundle = join(this.#folder, "kitquill.mjs");

  static async build(): Promise<Cli> {
    const cli = new Cli();
    await build(await optionsOfServer(cli.#folder));
    return cli;
  }

  /** A folder with the files, by path. */
  folder(files: Readonly<Record<string, string | Uint8Array>>): string {
    const folder = mkdtempSync(join(this.#folder, "kits-"));
    for (const [name, content] of Object.entries(files)) {
      mkdirSync(dirname(join(folder, name)), { recursive: true });
      writeFileSync(join(folder, name), content);
    }
    return folder;
  }

  run(cwd: string, ...args: readonly string[]): Promise<Outcome> {
    return this.spawn(process.execPath, [this.bundle, ...args], cwd);
  }

  spawn(
    program: string,
    args: readonly string[],
    cwd: string,
    env: Readonly<Record<string, string>> = {},
  ): Promise<Outcome> {
    const child = spawn(program, args, { cwd, env: { PATH: process.env.PATH, ...env } });
    let [out, err] = ["", ""];
    child.stdout.setEncoding("utf8").on("data", (text) => {
      out += text;
    });
    child.stderr.setEncoding("utf8").on("data", (text) => {
      err += text;
    });
    return new Promise((resolve, reject) => {
      child.on("error", reject);
      child.on("close", (code) => resolve({ code, out, err }));
    });
  }

  remove(): void {
    rmSync(this.#folder, { recursive: true });
  }
}

/** How the project's own build makes the server and the command line. */
async function optionsOfServer(into: string): Promise<BuildOptions> {
  const script = pathToFileURL(join(ROOT, "scripts/build.mjs")).href;
  const { BUILDS, optionsOf } = await import(script);
  const server = BUILDS.find(({ name }: { name: string }) => name === "server");
  return optionsOf(server, { into });
}
