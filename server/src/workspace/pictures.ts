/** Which of the pictures that a guide shows are there, as far as that has been looked up. */
import { resolveReference } from "./paths.ts";
import type { Sources } from "./sources.ts";

/** How pictures are looked for; `Reach` says which folders count. */
export interface PictureSources {
  readonly sources: Sources;
  readonly folders: readonly string[];
}

export class Pictures {
  readonly #context: PictureSources;
  /** The file that an address names, by page and address; undefined for one not looked for. */
  readonly #named = new Map<string, string | undefined>();
  readonly #found = new Map<string, boolean>();
  readonly #wanted = new Set<string>();

  constructor(context: PictureSources) {
    this.#context = context;
  }

  /** Whether the picture is missing; false too while that is not known. */
  isMissing(pageUri: string, address: string): boolean {
    const file = this.#fileOf(pageUri, address);
    if (file === undefined) return false;
    const found = this.#found.get(file);
    if (found === undefined) this.#wanted.add(file);
    return found === false;
  }

  /** Looks for what was asked for and not known. Gives whether a picture turned out to be missing. */
  async lookUp(): Promise<boolean> {
    const wanted = [...this.#wanted];
    this.#wanted.clear();
    const found = await Promise.all(wanted.map((uri) => this.#context.sources.exists(uri)));
    for (const [index, uri] of wanted.entries()) this.#found.set(uri, found[index]!);
    return found.includes(false);
  }

  /** Whether the file is one that was looked for; then it will be looked for again. */
  forget(uri: string): boolean {
    return this.#found.delete(uri);
  }

  #fileOf(pageUri: string, address: string): string | undefined {
    const key = `${pageUri}\n${address}`;
    if (this.#named.has(key)) return this.#named.get(key);
    const file = pictureFile(pageUri, address, this.#context.folders);
    this.#named.set(key, file);
    return file;
  }
}

/**
 * The file that a picture's address in a page names; undefined for one that lies elsewhere: it is not
 * looked for, and nothing is said of it.
 */
export function pictureFile(
  pageUri: string,
  address: string,
  folders: readonly string[],
): string | undefined {
  const resolved = resolveReference(pageUri, pathOf(address), { folders, outsideAllowed: false });
  return "uri" in resolved ? resolved.uri : undefined;
}

/** An address without query and fragment, its percent signs decoded. */
export function pathOf(address: string): string {
  const path = address.replace(/[?#].*$/s, "");
  try {
    return decodeURIComponent(path);
  } catch {
    // A stray percent sign means itself, as in the names of files.
    return path;
  }
}
