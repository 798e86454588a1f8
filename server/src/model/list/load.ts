/**
 * Reads a parts list of any kind of file. What reads workbooks and netlists is loaded when the first
 * one comes, so that nobody else waits for it.
 */
import { decodeText, MAX_TEXT_BYTES } from "../../text/decode.ts";
import { isWorkbook } from "../../text/fileKind.ts";
import { readNetlistList } from "./netlistList.ts";
import type { PartsList } from "./partsList.ts";
import { type ReadOptions, readPartsList } from "./read.ts";
import { isXml } from "./textKind.ts";
import { type ListText, unreadable } from "./unreadable.ts";

/** The parts list in the bytes of a file, or in the text that an editor holds of it. */
export async function loadPartsList(
  uri: string,
  source: Uint8Array | string,
  options: ReadOptions = {},
): Promise<PartsList> {
  if (typeof source !== "string" && isWorkbook(source)) return loadWorkbook(uri, source, options);
  const netlist = xmlOf(uri, source);
  if (!netlist) return readPartsList(uri, source, options);
  const { readNetlist } = await import("../../syntax/sheets/load.ts");
  return readNetlistList(netlist, readNetlist(netlist.text), options.columns ?? {});
}

async function loadWorkbook(
  uri: string,
  bytes: Uint8Array,
  options: ReadOptions,
): Promise<PartsList> {
  const { readWorkbook } = await import("../../syntax/sheets/load.ts");
  const workbook = readWorkbook(bytes, options.sheet);
  if ("sheets" in workbook) return readPartsList(uri, workbook, options);
  return unreadable({ uri, text: "", encoding: "utf-8" }, workbook.problem);
}

/** Bytes or characters by which XML is known. */
const HEAD = 4_096;

function xmlOf(uri: string, source: Uint8Array | string): ListText | undefined {
  if (source.length > MAX_TEXT_BYTES) return undefined;
  if (typeof source === "string") {
    return isXml(source) ? { uri, text: source, encoding: "utf-8" } : undefined;
  }
  const head = decodeText(source.subarray(0, HEAD));
  if (!("text" in head) || !isXml(head.text)) return undefined;
  const decoded = decodeText(source);
  return "text" in decoded ? { uri, ...decoded } : undefined;
}
