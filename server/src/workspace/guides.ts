/** Finds the guides below a folder: Markdown files whose front matter has the key `parts`. */
import { URI, Utils } from "vscode-uri";
import { isGuide } from "../syntax/frontMatterReader.ts";
import { decodeText } from "../text/decode.ts";
import { FileError, type Files, type FolderEntry } from "./files.ts";
import { type IgnoreLayer, ignoreLayer, isIgnored } from "./ignored.ts";

const SKIPPED = new Set([".git", "node_modules"]);
const MARKDOWN = /\.(?:md|markdown)$/i;

export interface Found {
  readonly uri: string;
  /** Why it could not be looked into; a guide has none. */
  readonly problem?: string;
}

/**
 * The guides below the folder, in the order of their paths, as they are found. Leaves out what
 * `.gitignore` files do, those of the folders above up to the repository's root included, and
 * `.git`, `node_modules` and links.
 */
export async function* findGuides(
  files: Files,
  folderUri: string,
): AsyncGenerator<Found, void, void> {
  const { path, layers } = await rulesAbove(files, folderUri);
  yield* walk(files, folderUri, path, layers);
}

/** `path` is the folder's path below the repository's root, where `layers` count from. */
async function* walk(
  files: Files,
  folderUri: string,
  path: string,
  layers: readonly IgnoreLayer[],
): AsyncGenerator<Found, void, void> {
  let entries: readonly FolderEntry[];
  let inner = layers;
  try {
    entries = await files.list(folderUri);
    const own = await layerOf(files, entries, path);
    if (own) inner = [...layers, own];
  } catch (error) {
    yield problem(folderUri, error);
    return;
  }
  for (const entry of entries) {
    const below = path + entry.name;
    if (entry.kind === "folder") {
      if (SKIPPED.has(entry.name) || isIgnored(`${below}/`, inner)) continue;
      yield* walk(files, entry.uri, `${below}/`, inner);
    } else if (MARKDOWN.test(entry.name) && !isIgnored(below, inner)) {
      yield* look(files, entry.uri);
    }
  }
}

/** The rules of the repository that the folder is in; none when they leave out the folder itself. */
async function rulesAbove(files: Files, folderUri: string) {
  const above = await foldersAbove(files, folderUri);
  const layers: IgnoreLayer[] = [];
  let path = "";
  for (const { entries, name } of above) {
    const layer = await layerOf(files, entries, path);
    if (layer) layers.push(layer);
    path += `${name}/`;
  }
  const named = path !== "" && isIgnored(path, layers);
  return { path, layers: named ? [] : layers };
}

/** From the repository's root to the folder's parent, each with the name of the next one down. */
async function foldersAbove(files: Files, folderUri: string) {
  const above: { entries: readonly FolderEntry[]; name: string }[] = [];
  let folder = URI.parse(folderUri);
  let entries = await listIfAllowed(files, folder);
  while (entries && !entries.some(({ name }) => name === ".git")) {
    const parent = Utils.dirname(folder);
    if (parent.path === folder.path) return [];
    entries = await listIfAllowed(files, parent);
    if (entries) above.unshift({ entries, name: Utils.basename(folder) });
    folder = parent;
  }
  return entries ? above : [];
}

async function listIfAllowed(files: Files, folder: URI) {
  try {
    return await files.list(folder.toString());
  } catch (error) {
    if (error instanceof FileError) return undefined;
    throw error;
  }
}

async function* look(files: Files, uri: string): AsyncGenerator<Found, void, void> {
  try {
    const bytes = await files.read(uri);
    if (bytes && holdsGuide(bytes)) yield { uri };
  } catch (error) {
    yield problem(uri, error);
  }
}

/** Whether the bytes are the text of a guide. */
export function holdsGuide(bytes: Uint8Array): boolean {
  const decoded = decodeText(bytes);
  return "text" in decoded && isGuide(decoded.text);
}

async function layerOf(files: Files, entries: readonly FolderEntry[], path: string) {
  const entry = entries.find(({ name, kind }) => name === ".gitignore" && kind === "file");
  const bytes = entry && (await files.read(entry.uri));
  return bytes && ignoreLayer(path, new TextDecoder().decode(bytes));
}

function problem(uri: string, error: unknown): Found {
  if (error instanceof FileError) return { uri, problem: error.message };
  throw error;
}
