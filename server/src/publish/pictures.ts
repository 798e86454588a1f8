/** The pictures of a publication: written into the page, or as files beside it. */
import { base64 } from "./base64.ts";
import type { Content } from "./content.ts";
import type { PagePictures } from "./fill/filler.ts";
import { fingerprint } from "./fill/stepKeys.ts";
import { isWrittenOut } from "./html.ts";
import type { PictureType } from "./pictureType.ts";

export interface LoadedPicture {
  readonly pageUri: string;
  /** The address in the page. */
  readonly url: string;
  /** The file's own name. */
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly type: PictureType;
}

/** A picture's number between noncharacters, where no text of an author's can stand. */
const SIGN = /(?<=<img src=")\uFDD2(\d+)\uFDD3/;

/**
 * Pictures as part of the page's own text. While the page is put together signs stand for them:
 * written out they take a third more than the files do, and a page may hold hundreds.
 */
export class InlinePictures implements PagePictures {
  readonly #signs = new Map<string, string>();
  readonly #bytes: Uint8Array[] = [];
  readonly #types: string[] = [];

  add({ pageUri, url, bytes, type }: LoadedPicture): void {
    const index = this.#bytes.push(bytes) - 1;
    this.#types.push(type.media);
    this.#signs.set(keyOf(pageUri, url), `\uFDD2${index}\uFDD3`);
  }

  source(pageUri: string, url: string): string | undefined {
    if (isWrittenOut(url)) return url;
    return this.#signs.get(keyOf(pageUri, url));
  }

  content(page: string): Content {
    const [first, ...others] = page.split(SIGN);
    const stretches: (string | (() => Uint8Array))[] = [first!];
    for (let at = 0; at < others.length; at += 2) {
      const index = Number(others[at]);
      stretches.push(`data:${this.#types[index]};base64,`, () => base64(this.#bytes[index]!));
      stretches.push(others[at + 1]!);
    }
    return { stretches };
  }
}

/** Pictures in a folder beside the page, each file once. */
export class PicturesBeside implements PagePictures {
  readonly #names = new Map<string, string>();
  readonly files = new Map<string, Uint8Array>();

  add({ pageUri, url, name, bytes, type }: LoadedPicture): void {
    const file = `pictures/${safeName(name, bytes)}.${type.ending}`;
    this.#names.set(keyOf(pageUri, url), file);
    this.files.set(file, bytes);
  }

  source(pageUri: string, url: string): string | undefined {
    return this.#names.get(keyOf(pageUri, url));
  }

  content(page: string): Content {
    return page;
  }
}

/**
 * A name, without ending, that every file system takes, and that tells pictures of one name apart by
 * their content.
 */
function safeName(name: string, bytes: Uint8Array): string {
  const stem = name
    .replace(/\.[^.]*$/, "")
    .normalize("NFKD")
    .replace(/[^A-Za-z0-9-]+/g, "-");
  const short = stem.replace(/^-+|-+$/g, "").slice(0, 40) || "picture";
  return `${short}-${contentHash(bytes)}`;
}

/** Of length and content. */
function contentHash(bytes: Uint8Array): string {
  return fingerprint(`${bytes.length}:`, bytes);
}

function keyOf(pageUri: string, url: string): string {
  return `${pageUri}\n${url}`;
}
