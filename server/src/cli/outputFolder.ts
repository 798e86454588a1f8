/** What stands in the way of a publication in the folder that it goes to: files there that are not ours. */
import type { Stats } from "node:fs";
import { lstat, open, readFile } from "node:fs/promises";
import { join } from "node:path";
import type { PublishedFile } from "../publish/outputs/output.ts";
import { MARK_WITHIN } from "../publish/replacing.ts";

/** Why none of the files is to be written; empty when all may be. Force replaces files, but no folders. */
export async function obstacles(
  folder: string,
  files: readonly PublishedFile[],
  isForced: boolean,
): Promise<readonly string[]> {
  const found: string[] = [];
  for (const file of files) {
    const told = await obstacle(folder, file, isForced);
    if (told !== undefined) found.push(told);
  }
  return found;
}

async function obstacle(
  folder: string,
  file: PublishedFile,
  isForced: boolean,
): Promise<string | undefined> {
  const { name, mark, titleMark } = file;
  const path = join(folder, name);
  const stats = await lstat(path).catch(() => undefined);
  if (!stats) return undefined;
  if (stats.isDirectory()) return `\`${name}\` is there and is a folder.`;
  if (isForced) return undefined;
  if (!stats.isFile()) return `\`${name}\` is there and is no ordinary file.`;
  const isOurs =
    mark === undefined ? await isThere(path, file, stats) : await beginsWith(path, mark);
  if (isOurs && titleMark !== undefined && !(await beginsWith(path, titleMark))) {
    return `\`${name}\` is there and was published from a guide of another title.`;
  }
  if (isOurs) return undefined;
  return `\`${name}\` is there and was not made by Kitquill, or was changed at its beginning.`;
}

/** Whether the mark stands in the beginning of the file. */
async function beginsWith(path: string, mark: string): Promise<boolean> {
  const file = await open(path, "r");
  try {
    const { buffer, bytesRead } = await file.read(Buffer.alloc(MARK_WITHIN), 0, MARK_WITHIN, 0);
    return buffer.subarray(0, bytesRead).includes(mark);
  } finally {
    await file.close();
  }
}

/** Whether the file holds just the bytes of a picture. */
async function isThere(path: string, { content }: PublishedFile, { size }: Stats) {
  const bytes = content();
  if (!(bytes instanceof Uint8Array) || bytes.length !== size) return false;
  return Buffer.compare(await readFile(path), bytes) === 0;
}
