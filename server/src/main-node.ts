/** Entry of the language server as a Node process: over IPC from an editor, or stdio. */

import { readdir } from "node:fs/promises";
import { dirname } from "node:path";
import {
  type Connection,
  createConnection,
  ProposedFeatures,
  StreamMessageReader,
  StreamMessageWriter,
} from "vscode-languageserver/node";
import { URI } from "vscode-uri";
import { ClientFiles } from "./lsp/clientFiles.ts";
import { serve } from "./lsp/server.ts";
import { DiskFiles } from "./workspace/disk.ts";

/** Serves an editor over standard input and output. */
export function startStdio(): void {
  start(
    createConnection(
      ProposedFeatures.all,
      new StreamMessageReader(process.stdin),
      new StreamMessageWriter(process.stdout),
    ),
  );
}

function start(connection: Connection): void {
  serve(connection, {
    pause: () => new Promise((resolve) => setImmediate(resolve)),
    now: () => performance.now(),
    files: ({ clientFiles }) => (clientFiles ? new ClientFiles(connection) : new NearbyFiles()),
  });
  connection.listen();
}

/** Files on disk; the guide of a page is looked for in the page's folder and the one above. */
class NearbyFiles extends DiskFiles {
  async markdownFiles(limit: number, near: string): Promise<readonly string[]> {
    const folder = dirname(URI.parse(near).fsPath);
    const found: string[] = [];
    for (const path of [folder, dirname(folder)]) {
      for (const name of await readdir(path)) {
        if (/\.(?:md|markdown)$/i.test(name)) found.push(URI.file(`${path}/${name}`).toString());
      }
    }
    return found.slice(0, limit);
  }
}

// An editor that starts this file as a module passes its transport as an argument.
if (process.argv.some((argument) => /^--(?:node-ipc|stdio|socket|pipe)/.test(argument))) {
  if (!process.argv.includes("lsp")) start(createConnection(ProposedFeatures.all));
}
