/** Reads a parts list by itself, without a guide. */
import type { PartsList } from "../model/list/partsList.ts";
import { readPartsList } from "../model/list/read.ts";
import { LineIndex } from "../text/lines.ts";
import { DiskFiles } from "../workspace/disk.ts";
import { FileError } from "../workspace/files.ts";
import { UsageError } from "./arguments.ts";
import type { Terminal } from "./terminal.ts";

/** The list, what could not be read in it told on the terminal. Throws a UsageError for no list. */
export async function readList(uri: string, name: string, terminal: Terminal): Promise<PartsList> {
  const bytes = await bytesOf(uri, name);
  const list = readPartsList(uri, bytes, { columns: {} });
  if (list.format === "unreadable") {
    const why = list.problems[0]?.message ?? "It cannot be read.";
    throw new UsageError(`\`${name}\` cannot be used as a parts list. ${why}`);
  }
  const lines = new LineIndex(list.text);
  for (const { code, span, message } of list.problems) {
    const { line, column } = lines.positionAt(span.start);
    terminal.err(`${name}:${line + 1}:${column + 1} ${code} ${message}\n`);
  }
  return list;
}

async function bytesOf(uri: string, name: string): Promise<Uint8Array> {
  try {
    const bytes = await new DiskFiles().read(uri);
    if (bytes) return bytes;
  } catch (error) {
    if (error instanceof FileError) throw new UsageError(error.message);
    throw error;
  }
  throw new UsageError(`There is no file \`${name}\`.`);
}
