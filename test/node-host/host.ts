/**
 * The editor whose extensions run in Node, with the packaged extension installed, serving a copy of a
 * folder; edits reach that copy. All files of a run are in one folder below .runs/.
 */
import { spawnSync } from "node:child_process";
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { ENTRY } from "../../scripts/nodeHost.mjs";
import { QUIET } from "../editor/driver.ts";
import { freePort, type Host, runFolder, startHost } from "../editor/hostProcess.ts";

const ROOT = join(import.meta.dirname, "../..");
const RUNS = join(import.meta.dirname, ".runs");

export interface NodeHost extends Host {
  /** The copy of the folder. */
  readonly folder: string;
  /** Ids of the language server's processes. */
  servers(): number[];
  /** When the extension's log last told this, in milliseconds since 1970. */
  logged(words: string): number;
}

/**
 * @param folder a folder, or one with the file of a window of several folders
 * @param settings beside those that keep the editor quiet
 */
export async function serveNodeEditor(folder: string, settings: object = {}): Promise<NodeHost> {
  const { files, copy } = runFolder(RUNS, folder);
  mkdirSync(join(files, "data/User"), { recursive: true });
  writeFileSync(join(files, "data/User/settings.json"), JSON.stringify({ ...QUIET, ...settings }));
  const places = [
    `--user-data-dir=${join(files, "data")}`,
    `--extensions-dir=${join(files, "extensions")}`,
  ];
  const env = environment(files);
  const installed = spawnSync(process.execPath, [ENTRY, ...places, "--install-extension", vsix()], {
    env,
  });
  if (installed.status !== 0)
    throw new Error(`The extension was not installed: ${installed.stderr}`);
  const port = await freePort();
  const address = `http://localhost:${port}/?${opened(copy)}`;
  const args = [
    ENTRY,
    ...places,
    "--auth=none",
    `--bind-addr=localhost:${port}`,
    "--disable-telemetry",
    "--disable-update-check",
  ];
  const host = await startHost({ args, port, address, files, env, hasChildren: true });
  return {
    ...host,
    folder: copy,
    servers: () => processesOf(join(files, "extensions")),
    logged: (words) => timeOf(words, join(files, "data/logs")),
  };
}

/** What the address says is to be opened. */
function opened(folder: string): URLSearchParams {
  const window = readdirSync(folder).find((name) => name.endsWith(".code-workspace"));
  return new URLSearchParams(window ? { workspace: join(folder, window) } : { folder });
}

/** A line of a log begins with the local time, to the millisecond. */
function timeOf(words: string, logs: string): number {
  const files = readdirSync(logs, { recursive: true, encoding: "utf8" });
  const log = files.find((name) => name.endsWith("Kitquill.log"));
  if (!log) throw new Error("The extension has written no log.");
  const lines = readFileSync(join(logs, log), "utf8").split("\n");
  const line = lines.findLast((one) => one.includes(words));
  if (!line) throw new Error(`The log does not tell "${words}". It says:\n${lines.join("\n")}`);
  return new Date(line.slice(0, "2000-01-01 00:00:00.000".length)).getTime();
}

/** Keeps all that it writes in the run's own folder, and asks no gallery. */
function environment(files: string): NodeJS.ProcessEnv {
  return {
    ...process.env,
    EXTENSIONS_GALLERY: "{}",
    XDG_DATA_HOME: join(files, "xdg"),
    XDG_CONFIG_HOME: join(files, "xdg"),
    XDG_CACHE_HOME: join(files, "xdg"),
  };
}

/** What the release names, else what `npm run package` has made. */
function vsix(): string {
  if (process.env.KITQUILL_VSIX) return process.env.KITQUILL_VSIX;
  const { name, version } = JSON.parse(readFileSync(join(ROOT, "package.json"), "utf8"));
  return join(ROOT, `${name}-${version}.vsix`);
}

/** When a process was started, in milliseconds since 1970; to a hundredth of a second. */
export function startOf(id: number): number {
  const tell = (pattern: RegExp, file: string) => pattern.exec(readFileSync(file, "utf8"))![1]!;
  // Behind the name, in brackets, the start is the twentieth field, in ticks since the machine's start.
  const ticks = Number(tell(/.*\) (.*)/s, `/proc/${id}/stat`).split(" ")[19]);
  const uptime = Number(tell(/^(\S+)/, "/proc/uptime"));
  return Math.round(Date.now() - uptime * 1_000 + ticks * 10);
}

/** Processes that run a server from this folder of extensions. */
function processesOf(extensions: string): number[] {
  return readdirSync("/proc")
    .filter((name) => /^\d+$/.test(name))
    .filter((id) => {
      const line = commandLine(id);
      return line.includes(extensions) && line.includes("server.mjs");
    })
    .map(Number);
}

/** Empty for a process that has ended meanwhile. */
function commandLine(id: string): string {
  try {
    return readFileSync(`/proc/${id}/cmdline`, "utf8");
  } catch {
    return "";
  }
}
