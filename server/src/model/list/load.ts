/**
 * Reads a parts list of any kind of file. What reads workbooks is loaded when the first one comes, so
 * that nobody else waits for it.
 */
import { isWorkbook } from "../../text/fileKind.ts";
import type { PartsList } from "./partsList.ts";
import { type ReadOptions, readPartsList } from "./read.ts";
import { unreadable } from "./unreadable.ts";

/** The parts list in the bytes of a file, or in the text that an editor holds of it. */
export async function loadPartsList(
  uri: string,
  source: Uint8Array | string,
  options: ReadOptions = {},
): Promise<PartsList> {
  if (typeof source === "string" || !isWorkbook(source)) return readPartsList(uri, source, options);
  const { readWorkbook } = await import("../../syntax/sheets/load.ts");
  const workbook = readWorkbook(source, options.sheet);
  if ("sheets" in workbook) return readPartsList(uri, workbook, options);
  return unreadable({ uri, text: "", encoding: "utf-8" }, workbook.problem);
}
