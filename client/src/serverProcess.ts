/**
 * Runs the server as a process of its own. The library could do that, but looks for a folder on the disk
 * first, and its answer comes after all that other extensions do while the editor starts.
 */
import { type ChildProcess, spawn } from "node:child_process";

/** How long a server that was asked to end may take for it. */
const END_MS = 2_000;

export class ServerProcess {
  private process: ChildProcess | undefined;

  constructor(private readonly module: string) {}

  /** Starts a server; `told` hears why when it ends other than it was asked to. */
  async run(told: (end: string) => void): Promise<ChildProcess> {
    // The editor's own program is a Node when it is asked to be.
    const env = { ...process.env, ELECTRON_RUN_AS_NODE: "1", ELECTRON_NO_ASAR: "1" };
    const server = spawn(process.execPath, [this.module, "--stdio"], { env });
    server.on("error", ({ message }) => told(`The server cannot be run: ${message}`));
    server.on("exit", (code, signal) => {
      if (code !== 0) told(`The server ended with ${signal ?? `code ${code}`}.`);
    });
    this.process = server;
    return server;
  }

  /** Ends the server that does not end by itself. */
  end(): void {
    const server = this.process;
    setTimeout(() => server?.kill("SIGKILL"), END_MS);
  }
}
