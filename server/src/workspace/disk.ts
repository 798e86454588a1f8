/** Files on disk, through Node. The one module of the analysis that knows `node:`. */
import { open, readdir, realpath, stat } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import { URI, Utils } from "vscode-uri";
import { FileError, type Files, type FolderEntry, MAX_FILE_BYTES } from "./files.ts";
import { marksOf } from "./openElsewhere.ts";
import { isInside } from "./paths.ts";

export class DiskFiles implements Files {
  /**
   * Folders that reading keeps to: a link inside one of them that leads out of all is refused.
   * The path itself is `resolveReference`'s business.
   */
  folders: readonly string[];
  readonly #limit: number;

  constructor(folders: readonly string[] = [], limit = MAX_FILE_BYTES) {
    this.folders = folders;
    this.#limit = limit;
  }

  async read(uri: string): Promise<Uint8Array | undefined> {
    const { scheme, fsPath } = URI.parse(uri);
    if (scheme !== "file") return undefined;
    try {
      // Asked before opening: to open a pipe would wait for its writer.
      const stats = await stat(fsPath);
      if (stats.isDirectory()) throw new FileError("folder", `\`${nameOf(uri)}\` is a folder.`);
      if (!stats.isFile())
        throw new FileError("no-file", `\`${nameOf(uri)}\` is no ordinary file.`);
      await this.#refuseLinksOut(uri, fsPath);
      return await this.#readBounded(uri, fsPath);
    } catch (error) {
      const isOpen = DENIED.has(codeOf(error)) && (await isOpenElsewhere(fsPath));
      return explain(error, uri, isOpen);
    }
  }

  async exists(uri: string): Promise<boolean> {
    const { scheme, fsPath } = URI.parse(uri);
    if (scheme !== "file") return false;
    try {
      return (await stat(fsPath)).isFile();
    } catch (error) {
      return !NOWHERE.has(codeOf(error));
    }
  }

  async list(folderUri: string): Promise<readonly FolderEntry[]> {
    const folder = URI.parse(folderUri);
    const found = await readdir(folder.fsPath, { withFileTypes: true }).catch((error) => {
      throw new FileError("denied", `The folder cannot be read (${codeOf(error)}).`);
    });
    const entries: FolderEntry[] = [];
    for (const entry of found) {
      const kind = entry.isDirectory() ? "folder" : entry.isFile() ? "file" : undefined;
      const uri = Utils.joinPath(folder, entry.name).toString();
      if (kind) entries.push({ name: entry.name, uri, kind });
    }
    return entries.sort((a, b) => (a.name < b.name ? -1 : 1));
  }

  async #refuseLinksOut(uri: string, path: string): Promise<void> {
    if (!this.folders.some((folder) => isInside(uri, folder))) return;
    const real = URI.file(await realpath(path)).toString();
    for (const folder of this.folders) {
      const realFolder = await realpath(URI.parse(folder).fsPath);
      if (isInside(real, URI.file(realFolder).toString())) return;
    }
    const message = `\`${nameOf(uri)}\` is a link to a file outside the folder that is open, so it is not read.`;
    throw new FileError("outside", message);
  }

  /** Reads one byte more than the limit at most, whatever size the file claims. */
  async #readBounded(uri: string, path: string): Promise<Uint8Array> {
    const file = await open(path, "r");
    try {
      const { size } = await file.stat();
      if (size > this.#limit) throw tooLarge(uri, size, this.#limit);
      const parts: Buffer[] = [];
      // `end` is the last byte that is read.
      const stream = file.createReadStream({ end: this.#limit, highWaterMark: 2 ** 20 });
      for await (const part of stream) parts.push(part);
      const { buffer, byteOffset, length } = Buffer.concat(parts);
      if (length > this.#limit) throw tooLarge(uri, length, this.#limit);
      return new Uint8Array(buffer, byteOffset, length);
    } finally {
      await file.close();
    }
  }
}

/** What the system says of a path that leads to no file. */
const NOWHERE = new Set(["ENOENT", "ENOTDIR", "ENAMETOOLONG", "ELOOP"]);

/** What it says of a file that is not ours to read, or that is in use. */
const DENIED = new Set(["EACCES", "EPERM"]);

/** `isOpen`: a program has the file open. */
function explain(error: unknown, uri: string, isOpen: boolean): undefined {
  if (error instanceof FileError) throw error;
  const code = codeOf(error);
  if (code === "ENOENT" || code === "ENOTDIR") return undefined;
  const name = nameOf(uri);
  switch (code) {
    case "EACCES":
    case "EPERM":
      if (isOpen) throw held(name);
      throw new FileError("denied", `\`${name}\` may not be read: permission is denied.`);
    case "EBUSY":
      throw held(name);
    case "ELOOP":
      throw new FileError("broken", `\`${name}\` is a link that leads back to itself.`);
    case "ENAMETOOLONG":
      throw new FileError("broken", "The path is longer than the system allows.");
    default:
      throw new FileError("broken", `\`${name}\` cannot be read (${code}).`);
  }
}

function held(name: string): FileError {
  return new FileError(
    "denied",
    `\`${name}\` is held by another program. Save it there and close it; it is then read by itself.`,
  );
}

/** Whether a spreadsheet program tells that it has the file open. */
async function isOpenElsewhere(path: string): Promise<boolean> {
  const marks = marksOf(basename(path)).map((mark) => join(dirname(path), mark));
  const found = await Promise.all(marks.map((mark) => stat(mark).catch(() => undefined)));
  return found.some((stats) => stats !== undefined);
}

function codeOf(error: unknown): string {
  return error instanceof Error && "code" in error ? String(error.code) : String(error);
}

function nameOf(uri: string): string {
  return Utils.basename(URI.parse(uri));
}

function tooLarge(uri: string, size: number, limit: number): FileError {
  const mebibytes = (bytes: number) => `${(bytes / 1024 / 1024).toFixed(0)} MB`;
  const message = `\`${nameOf(uri)}\` has ${mebibytes(size)}. Files above ${mebibytes(limit)} are not read.`;
  return new FileError("too-large", message);
}
