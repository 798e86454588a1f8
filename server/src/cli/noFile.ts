/** What to tell of a file that is not there: also which one of the folder was perhaps meant. */
import { readdir } from "node:fs/promises";
import { basename, dirname, join, resolve } from "node:path";
import { nearestWord } from "../text/nearest.ts";

/** `name` as the user wrote it, `what` it should have been. */
export async function noFile(name: string, cwd: string, what = "file"): Promise<string> {
  const found = await readdir(dirname(resolve(cwd, name))).catch(() => []);
  const near = nearestWord(basename(name), found.sort());
  const meant = near === undefined ? "" : ` Did you mean \`${join(dirname(name), near)}\`?`;
  return `There is no ${what} \`${name}\`.${meant}`;
}
