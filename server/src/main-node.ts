/** Entry of the language server as a Node process: over IPC from an editor, or stdio. */

import { readdir } from "node:fs/promises";
import { dirname } from "node:path";
import {
  createMessageConnection,
  IPCMessageReader,
  IPCMessageWriter,
  type MessageConnection,
  type MessageReader,
  type MessageWriter,
  StreamMessageReader,
  StreamMessageWriter,
} from "vscode-jsonrpc/node";
import { URI } from "vscode-uri";
import { ClientFiles } from "./lsp/clientFiles.ts";
import { type FileFinder, serve } from "./lsp/server.ts";
import { DiskFiles } from "./workspace/disk.ts";
import type { Files, FolderEntry } from "./workspace/files.ts";

/** How often it is looked whether the editor still lives. */
const LOOK_MS = 3_000;

/** How long what has come is still answered when the editor's end of the line is closed. */
const GRACE_MS = 1_000;

/** Serves an editor over standard input and output. */
export function startStdio(): void {
  start(new StreamMessageReader(process.stdin), new StreamMessageWriter(process.stdout));
}

function start(reader: MessageReader, writer: MessageWriter): void {
  const connection = createMessageConnection(reader, writer);
  const session = serve(connection, {
    pause: () => new Promise((resolve) => setImmediate(resolve)),
    now: () => performance.now(),
    files: ({ clientFiles }) => (clientFiles ? new EditorFiles(connection) : new NearbyFiles()),
  });
  const leave = () => process.exit(session.isOver ? 0 : 1);
  connection.onNotification("exit", leave);
  // What came before the end is still to be answered.
  connection.onClose(() => setTimeout(leave, GRACE_MS));
  setInterval(() => {
    if (session.editor !== undefined && !lives(session.editor)) leave();
  }, LOOK_MS).unref();
}

/** Whether there is a process of the number. */
function lives(id: number): boolean {
  try {
    return process.kill(id, 0);
  } catch {
    return false;
  }
}

/**
 * Files on disk are read from there, others through the editor, which also finds those of the
 * workspace. An editor that has just started takes its time to answer.
 */
class EditorFiles implements Files, FileFinder {
  readonly #disk = new DiskFiles();
  readonly #client: ClientFiles;

  constructor(connection: MessageConnection) {
    this.#client = new ClientFiles(connection);
  }

  read(uri: string): Promise<Uint8Array | undefined> {
    return this.#holding(uri).read(uri);
  }

  exists(uri: string): Promise<boolean> {
    return this.#holding(uri).exists(uri);
  }

  list(folderUri: string): Promise<readonly FolderEntry[]> {
    return this.#holding(folderUri).list(folderUri);
  }

  filesEnding(endings: readonly string[], limit: number): Promise<readonly string[]> {
    return this.#client.filesEnding(endings, limit);
  }

  #holding(uri: string): Files {
    return URI.parse(uri).scheme === "file" ? this.#disk : this.#client;
  }
}

/** Files on disk; others are looked for in a file's own folder and the one above. */
class NearbyFiles extends DiskFiles {
  async filesEnding(
    endings: readonly string[],
    limit: number,
    near: string,
  ): Promise<readonly string[]> {
    const folder = dirname(URI.parse(near).fsPath);
    const found: string[] = [];
    for (const path of [folder, dirname(folder)]) {
      for (const name of await readdir(path)) {
        const ending = name.slice(name.lastIndexOf(".") + 1).toLowerCase();
        if (endings.includes(ending)) found.push(URI.file(`${path}/${name}`).toString());
      }
    }
    return found.slice(0, limit);
  }
}

// An editor that starts this file as a module passes its transport as an argument.
if (process.argv.includes("--node-ipc")) {
  start(new IPCMessageReader(process), new IPCMessageWriter(process));
} else if (process.argv.includes("--stdio") && !process.argv.includes("lsp")) {
  startStdio();
}
