/** Finds lists of designators in plain text that could be marks as they stand. */
import type { Kit } from "../../model/kit.ts";
import type { Part } from "../../model/parts.ts";
import { isDynamic, resolveItem } from "../../model/resolve.ts";
import type { Item } from "../../syntax/dialect.ts";
import { MappedText } from "../../syntax/marks/mappedText.ts";
import { parseMark } from "../../syntax/marks/parseMark.ts";
import type { Span } from "../../text/span.ts";

/** `R1–R4, R7`: what would be a mark with brackets round it. */
export interface Run {
  readonly span: Span;
  readonly items: readonly RunItem[];
}

/** One item of a run and the parts that it names. */
export interface RunItem {
  readonly span: Span;
  readonly parts: readonly Part[];
}

const DESIGNATOR = String.raw`\p{Lu}[\p{L}_]{0,8}\d{1,5}[A-Za-z]?(?![\p{L}\p{N}_])`;
const DASH = String.raw`\s?(?:[-–—…]|\.{2,3})\s?|\s(?:to|through|thru|bis|à|tot|t/m|hasta|a)\s`;
/** The end of a range may leave its letters out only where nothing but a dash parts it: `R5 - 10 k` is none. */
const RANGE = String.raw`${DESIGNATOR}(?:(?:${DASH})${DESIGNATOR}|[-–—]\d{1,5}(?![\p{L}\p{N}])(?!\.\d))?`;
/** A number carries the letters on only where nothing but a comma stands before it. */
const CARRIED = String.raw`,\d{1,5}(?:[-–]\d{1,5})?(?![\p{L}\p{N}])(?!\.\d)`;
const LIST = new RegExp(
  String.raw`(?<![\p{L}\p{N}_$&#/.+-])${RANGE}(?:,\s?${RANGE}|${CARRIED})*`,
  "gu",
);

/**
 * The runs in `text` whose designators the kit has, all of them; `offset` is added to their spans.
 * `board` is the one that bare designators mean there.
 */
export function findRuns(text: string, offset: number, kit: Kit, board?: string): Run[] {
  const runs: Run[] = [];
  for (const match of text.matchAll(LIST)) {
    const start = offset + match.index;
    const items = readItems(match[0], start, kit, board);
    if (items) runs.push({ span: { start, end: start + match[0].length }, items });
  }
  return runs;
}

function readItems(
  text: string,
  offset: number,
  kit: Kit,
  board: string | undefined,
): RunItem[] | undefined {
  const result = parseMark(new MappedText(text, offset));
  if (!result || "almost" in result || result.mark.role !== "fit") return undefined;
  const { mark } = result;
  const items: RunItem[] = [];
  for (const item of mark.items) {
    const parts = partsOf(item, mark, kit, board);
    if (!parts) return undefined;
    items.push({ span: item.span, parts });
  }
  return items;
}

function partsOf(
  item: Item,
  mark: Parameters<typeof resolveItem>[1],
  kit: Kit,
  board: string | undefined,
): Part[] | undefined {
  const resolved = resolveItem(item, mark, kit, board);
  if (isDynamic(item, kit) || resolved.unknown.length > 0) return undefined;
  const parts = resolved.supplies.filter((one) => one.kind === "part");
  return parts.length > 0 ? parts : undefined;
}
