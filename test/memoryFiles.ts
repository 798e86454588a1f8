/** Files held in memory. */
import { URI, Utils } from "vscode-uri";
import { FileError, type Files, type FolderEntry } from "../server/src/workspace/files.ts";
import { canonicalUri, isInside } from "../server/src/workspace/paths.ts";

type Content = string | Uint8Array | FileError;

export class MemoryFiles implements Files {
  readonly #files = new Map<string, Content>();

  constructor(files: Readonly<Record<string, Content>> = {}) {
    for (const [uri, content] of Object.entries(files)) this.set(uri, content);
  }

  /** Text is kept as UTF-8; an error is what reading the file gives; undefined removes it. */
  set(uri: string, content: Content | undefined): void {
    if (content === undefined) this.#files.delete(canonicalUri(uri));
    else this.#files.set(canonicalUri(uri), content);
  }

  async read(uri: string): Promise<Uint8Array | undefined> {
    const content = this.#files.get(canonicalUri(uri));
    if (content instanceof FileError) throw content;
    return typeof content === "string" ? new TextEncoder().encode(content) : content;
  }

  async exists(uri: string): Promise<boolean> {
    return this.#files.has(canonicalUri(uri));
  }

  async list(folderUri: string): Promise<readonly FolderEntry[]> {
    const folder = URI.parse(folderUri);
    const depth = folder.path.replace(/\/*$/, "/").length;
    const entries = new Map<string, FolderEntry>();
    for (const uri of this.#files.keys()) {
      if (!isInside(uri, folderUri)) continue;
      const [name, ...rest] = URI.parse(uri).path.slice(depth).split("/");
      const kind = rest.length > 0 ? "folder" : "file";
      entries.set(name!, { name: name!, uri: Utils.joinPath(folder, name!).toString(), kind });
    }
    return [...entries.values()].sort((a, b) => (a.name < b.name ? -1 : 1));
  }
}
