/** The pictures of a publication: written into the page, or as files beside it. */
import type { PictureSource } from "./fill/filler.ts";
import { fingerprint } from "./fill/stepKeys.ts";

export interface LoadedPicture {
  readonly pageUri: string;
  /** The address in the page. */
  readonly url: string;
  /** The file's own name. */
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** Kinds of picture that browsers show, by the ending of the file's name. */
const TYPES: Readonly<Record<string, string>> = {
  avif: "image/avif",
  gif: "image/gif",
  jpeg: "image/jpeg",
  jpg: "image/jpeg",
  png: "image/png",
  svg: "image/svg+xml",
  webp: "image/webp",
};

/** The media type of a picture; undefined for a file that browsers do not show as one. */
export function pictureType(name: string): string | undefined {
  const ending = /\.([a-z]+)$/i.exec(name)?.[1] ?? "";
  return TYPES[ending.toLowerCase()];
}

/** Pictures as part of the page's own text. */
export class InlinePictures implements PictureSource {
  readonly #sources = new Map<string, string>();

  add({ pageUri, url, name, bytes }: LoadedPicture): void {
    const type = pictureType(name);
    if (type) this.#sources.set(keyOf(pageUri, url), `data:${type};base64,${base64(bytes)}`);
  }

  source(pageUri: string, url: string): string | undefined {
    // A picture that the author has written into the text already.
    if (/^data:image\/(?:png|jpeg|gif|webp|avif|svg\+xml)[;,]/i.test(url)) return url;
    return this.#sources.get(keyOf(pageUri, url));
  }
}

/** Pictures in a folder beside the page, each file once. */
export class PicturesBeside implements PictureSource {
  readonly #names = new Map<string, string>();
  readonly files = new Map<string, Uint8Array>();

  add({ pageUri, url, name, bytes }: LoadedPicture): void {
    if (!pictureType(name)) return;
    const file = `pictures/${safeName(name, bytes)}`;
    this.#names.set(keyOf(pageUri, url), file);
    this.files.set(file, bytes);
  }

  source(pageUri: string, url: string): string | undefined {
    return this.#names.get(keyOf(pageUri, url));
  }
}

/** A name that every file system takes, and that tells pictures of one name apart by their content. */
function safeName(name: string, bytes: Uint8Array): string {
  const dot = name.lastIndexOf(".");
  const stem = name
    .slice(0, dot)
    .normalize("NFKD")
    .replace(/[^A-Za-z0-9-]+/g, "-");
  const short = stem.replace(/^-+|-+$/g, "").slice(0, 40) || "picture";
  return `${short}-${contentHash(bytes)}.${name.slice(dot + 1).toLowerCase()}`;
}

function contentHash(bytes: Uint8Array): string {
  let text = `${bytes.length}:`;
  for (const byte of bytes) text += String.fromCharCode(byte);
  return fingerprint(text);
}

function keyOf(pageUri: string, url: string): string {
  return `${pageUri}\n${url}`;
}

const DIGITS = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
const CODES = Uint8Array.from(DIGITS, (sign) => sign.charCodeAt(0));
const FILLING = "=".charCodeAt(0);

/** RFC 4648 section 4. By tables: the `btoa` of Node takes a string and is slow with large pictures. */
function base64(bytes: Uint8Array): string {
  const signs = new Uint8Array(4 * Math.ceil(bytes.length / 3));
  for (let from = 0, to = 0; from < bytes.length; from += 3, to += 4) {
    const bits = (bytes[from]! << 16) | ((bytes[from + 1] ?? 0) << 8) | (bytes[from + 2] ?? 0);
    signs[to] = CODES[bits >> 18]!;
    signs[to + 1] = CODES[(bits >> 12) & 63]!;
    signs[to + 2] = from + 1 < bytes.length ? CODES[(bits >> 6) & 63]! : FILLING;
    signs[to + 3] = from + 2 < bytes.length ? CODES[bits & 63]! : FILLING;
  }
  return new TextDecoder().decode(signs);
}
