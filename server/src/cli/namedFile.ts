/** The content of a file that the user names; a UsageError where it cannot be read. */
import { resolve } from "node:path";
import { URI } from "vscode-uri";
import { type Decoded, decodeText } from "../text/decode.ts";
import { DiskFiles } from "../workspace/disk.ts";
import { FileError, type Files } from "../workspace/files.ts";
import { UsageError } from "./arguments.ts";
import { noFile } from "./noFile.ts";

/** `name`: as the user wrote it; a relative one counts from the folder `cwd`. */
export async function bytesOf(
  name: string,
  cwd: string,
  files: Files = new DiskFiles(),
): Promise<Uint8Array> {
  try {
    const bytes = await files.read(URI.file(resolve(cwd, name)).toString());
    if (bytes) return bytes;
  } catch (error) {
    if (!(error instanceof FileError)) throw error;
    throw new UsageError(
      error.kind === "folder" ? `\`${name}\` is a folder. Name a file in it.` : error.message,
    );
  }
  throw new UsageError(await noFile(name, cwd));
}

export function decodedText(bytes: Uint8Array, name: string): Decoded {
  const decoded = decodeText(bytes);
  if ("text" in decoded) return decoded;
  throw new UsageError(`\`${name}\`: ${decoded.problem}`);
}

export async function textOf(name: string, cwd: string): Promise<string> {
  return decodedText(await bytesOf(name, cwd), name).text;
}
