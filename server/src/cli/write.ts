/** Writes a file so that it is either the old one or the new one, whatever happens meanwhile. */
import { randomUUID } from "node:crypto";
import { open, readFile, realpath, rename, rm, stat } from "node:fs/promises";
import { basename, dirname, join } from "node:path";

/**
 * Replaces the file's content `before` by `after`. A link stays a link: the file behind it changes.
 * Throws when the file cannot be written, or holds something else than `before` by now.
 */
export async function replaceFile(
  path: string,
  before: Uint8Array,
  after: Uint8Array,
): Promise<void> {
  const real = await realpath(path);
  const { mode } = await stat(real);
  const temporary = join(dirname(real), `.${basename(real)}.${randomUUID()}.tmp`);
  try {
    const file = await open(temporary, "wx", mode);
    try {
      await file.chmod(mode);
      await file.writeFile(after);
      await file.sync();
    } finally {
      await file.close();
    }
    if (Buffer.compare(await readFile(real), before) !== 0) {
      throw new Error("it was changed by someone else meanwhile");
    }
    await rename(temporary, real);
  } catch (error) {
    await rm(temporary, { force: true });
    throw error;
  }
}
