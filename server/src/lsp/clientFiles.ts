/** Files read through the client, for a server without a file system of its own. */
import type { MessageConnection } from "vscode-jsonrpc";
import { URI, Utils } from "vscode-uri";
import { FileError, type Files, type FolderEntry, MAX_FILE_BYTES } from "../workspace/files.ts";
import { fileName } from "../workspace/paths.ts";
import {
  FIND_FILES,
  type FindFilesParams,
  type FindFilesResult,
  LIST_FOLDER,
  type ListFolderParams,
  type ListFolderResult,
  READ_FILE,
  type ReadFileParams,
  type ReadFileResult,
  STAT,
  type StatParams,
  type StatResult,
} from "./protocol.ts";

export class ClientFiles implements Files {
  readonly #connection: MessageConnection;

  constructor(connection: MessageConnection) {
    this.#connection = connection;
  }

  async read(uri: string): Promise<Uint8Array | undefined> {
    const params: ReadFileParams = { uri, maxBytes: MAX_FILE_BYTES };
    const result = await this.#connection.sendRequest<ReadFileResult>(READ_FILE, params);
    switch (result.kind) {
      case "bytes":
        return fromBase64(result.base64);
      case "missing":
        return undefined;
      case "too-large":
        throw new FileError("too-large", tooLarge(uri, result.size));
      case "unreadable":
        throw new FileError("broken", `The file cannot be read: ${result.message}`);
    }
  }

  async exists(uri: string): Promise<boolean> {
    const params: StatParams = { uri };
    const result = await this.#connection.sendRequest<StatResult>(STAT, params);
    return result.kind === "file" || result.kind === "unreadable";
  }

  async list(folderUri: string): Promise<readonly FolderEntry[]> {
    const params: ListFolderParams = { uri: folderUri };
    const result = await this.#connection.sendRequest<ListFolderResult>(LIST_FOLDER, params);
    if (result.kind !== "entries") {
      throw new FileError("denied", "The folder cannot be read.");
    }
    const folder = URI.parse(folderUri);
    return result.entries
      .map(({ name, kind }) => ({ name, kind, uri: Utils.joinPath(folder, name).toString() }))
      .sort((a, b) => (a.name < b.name ? -1 : 1));
  }

  /** Files of the workspace whose names end so, at most `limit`. */
  async filesEnding(endings: readonly string[], limit: number): Promise<readonly string[]> {
    const params: FindFilesParams = { glob: `**/*.{${endings.join(",")}}`, limit };
    const result = await this.#connection.sendRequest<FindFilesResult>(FIND_FILES, params);
    return result.uris;
  }
}

export function fromBase64(base64: string): Uint8Array {
  const characters = atob(base64);
  const bytes = new Uint8Array(characters.length);
  // Not `Uint8Array.from`, which takes a hundred times as long for a list of some 100 kB.
  for (let i = 0; i < bytes.length; i++) bytes[i] = characters.charCodeAt(i);
  return bytes;
}

function tooLarge(uri: string, size: number): string {
  const most = MAX_FILE_BYTES / 1024 / 1024;
  return `\`${fileName(uri)}\` has ${(size / 1024 / 1024).toFixed(0)} MB. Files above ${most} MB are not read.`;
}
