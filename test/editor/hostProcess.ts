/** The process that serves an editor for one test: started, waited for, and ended with its files. */
import { type ChildProcess, spawn } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, rmSync } from "node:fs";
import { createServer } from "node:net";
import { join } from "node:path";

const START_MS = 30_000;

export interface Host {
  /** Where the editor is opened. */
  readonly address: string;
  /** Ends the host and removes its files. */
  stop(): Promise<void>;
}

export interface HostPlan {
  /** Script of the host and its arguments. */
  readonly args: readonly string[];
  readonly port: number;
  readonly address: string;
  /** The folder of this run. */
  readonly files: string;
  readonly env?: NodeJS.ProcessEnv;
  /** It starts processes of its own, which must end with it. */
  readonly hasChildren?: boolean;
}

/** A new folder for the files of one run, with a copy of `folder` in it, which the run may change. */
export function runFolder(
  runs: string,
  folder: string,
): { readonly files: string; readonly copy: string } {
  mkdirSync(runs, { recursive: true });
  const files = mkdtempSync(join(runs, "run-"));
  const copy = join(files, "folder");
  cpSync(folder, copy, { recursive: true });
  return { files, copy };
}

/** Resolves when the host answers. */
export async function startHost(plan: HostPlan): Promise<Host> {
  const { args, port, address, files, env = process.env, hasChildren = false } = plan;
  const stdio = ["ignore", "pipe", "pipe"] as const;
  const child = spawn(process.execPath, args, { env, stdio: [...stdio], detached: hasChildren });
  const stop = async () => {
    await end(child, hasChildren);
    rmSync(files, { recursive: true, force: true });
  };
  try {
    await untilReady(child, port);
  } catch (error) {
    await stop();
    throw error;
  }
  return { address, stop };
}

/** A port of this machine that nothing listens on. */
export function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.on("error", reject);
    probe.listen(0, "localhost", () => {
      const address = probe.address();
      const port = typeof address === "object" && address ? address.port : 0;
      probe.close(() => resolve(port));
    });
  });
}

/** Node resolves no names below localhost: the plain one is asked. */
async function untilReady(child: ChildProcess, port: number): Promise<void> {
  let said = "";
  for (const stream of [child.stdout, child.stderr]) {
    stream?.on("data", (data: Buffer) => {
      said += data;
    });
  }
  const until = Date.now() + START_MS;
  while (Date.now() < until && child.exitCode === null) {
    const answer = await fetch(`http://localhost:${port}/`).catch(() => undefined);
    if (answer?.ok) return;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  throw new Error(`The editor's test host did not start. It said:\n${said}`);
}

function end(child: ChildProcess, hasChildren: boolean): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return Promise.resolve();
  return new Promise((resolve) => {
    child.once("exit", () => resolve());
    // Of a process that was started apart, the negative number is that of its group.
    process.kill(hasChildren ? -child.pid! : child.pid!, "SIGKILL");
  });
}
