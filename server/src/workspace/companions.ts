/** Which guides near a file name it as a page or parts list. */
import { readFrontMatter } from "../syntax/frontMatterReader.ts";
import { decodeText } from "../text/decode.ts";
import { FileError, type Files } from "./files.ts";
import { resolveReference, splitSheet } from "./paths.ts";

/**
 * Guides among `candidates` that are meant themselves or whose front matter names a file that is;
 * those that cannot be read name nothing.
 */
export async function guidesNaming(
  isMeant: (uri: string) => boolean,
  candidates: readonly string[],
  files: Files,
): Promise<readonly string[]> {
  const found: string[] = [];
  for (const candidate of candidates) {
    if (await concerns(candidate, isMeant, files)) found.push(candidate);
  }
  return found;
}

async function concerns(
  candidate: string,
  isMeant: (uri: string) => boolean,
  files: Files,
): Promise<boolean> {
  const bytes = await readOrSkip(files, candidate);
  const decoded = bytes && decodeText(bytes);
  if (!decoded || !("text" in decoded)) return false;
  const notes = readFrontMatter(decoded.text);
  if (!notes?.keys.has("parts")) return false;
  if (isMeant(candidate)) return true;
  const paths = [...notes.pages, ...notes.parts.map((entry) => entry.path)];
  return paths.some(({ value }) => {
    const { path } = splitSheet(value);
    const resolved = resolveReference(candidate, path, { folders: [], outsideAllowed: true });
    return "uri" in resolved && isMeant(resolved.uri);
  });
}

async function readOrSkip(files: Files, uri: string): Promise<Uint8Array | undefined> {
  try {
    return await files.read(uri);
  } catch (error) {
    if (error instanceof FileError) return undefined;
    throw error;
  }
}
