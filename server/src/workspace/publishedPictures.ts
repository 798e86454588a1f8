/** Reads a picture for a publication, or says why readers will not see it. */
import { URI, Utils } from "vscode-uri";
import { isWrittenOut } from "../publish/html.ts";
import type { LoadedPicture } from "../publish/pictures.ts";
import {
  isActive,
  isCutShort,
  KINDS_SHOWN,
  type PictureType,
  pictureType,
} from "../publish/pictureType.ts";
import { pictureFile } from "./pictures.ts";
import type { Wanted } from "./sources.ts";

export interface PictureFiles {
  picture(uri: string): Promise<Wanted<Uint8Array>>;
}

/** A picture as a page names it. */
export interface Address {
  readonly pageUri: string;
  readonly url: string;
}

/** A picture that is shown may have a warning too. */
export interface Loaded {
  readonly picture?: LoadedPicture;
  readonly warning?: string;
}

export async function loadPicture(
  address: Address,
  folders: readonly string[],
  files: PictureFiles,
): Promise<Loaded> {
  const { pageUri, url } = address;
  if (isWrittenOut(url)) return {};
  if (/^https?:/i.test(url)) {
    return missed(address, "the page loads nothing from the web, so it gives the address only");
  }
  if (/^(?:[?#]|\s*$)/.test(url)) return missed(address, "it names no file");
  const uri = pictureFile(pageUri, url, folders);
  if (uri === undefined) {
    return missed(address, "its address leads out of the folder that is open, so it is not read");
  }
  const read = await files.picture(uri);
  if (read.kind === "missing") return missed(address, "there is no such file");
  if (read.kind !== "found") return missed(address, read.message);
  const type = pictureType(read.value);
  if (!type) return missed(address, noPicture(read.value));
  const picture = { pageUri, url, name: Utils.basename(URI.parse(uri)), bytes: read.value, type };
  return { picture, ...doubt(address, read.value, type) };
}

function noPicture({ length }: Uint8Array): string {
  return length === 0 ? "the file is empty" : `the file holds no picture (${KINDS_SHOWN})`;
}

function doubt(address: Address, bytes: Uint8Array, type: PictureType): Loaded {
  if (isCutShort(bytes, type)) {
    return {
      warning: `${named(address)} is shown in part at best: the file stops before its end. Copy it anew.`,
    };
  }
  if (!isActive(bytes, type)) return {};
  return {
    warning: `${named(address)} holds a script, or fetches something from the web. Inside the page neither happens, but it does when somebody opens the drawing by itself. Take it out there.`,
  };
}

function missed(address: Address, why: string): Loaded {
  const ended = /[.!?]$/.test(why) ? why : `${why}.`;
  return { warning: `${named(address)} is not shown: ${ended}` };
}

function named({ pageUri, url }: Address): string {
  return `Picture \`${url}\` of ${Utils.basename(URI.parse(pageUri))}`;
}
