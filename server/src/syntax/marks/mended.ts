/** What a bracket becomes when its near miss is mended: a fix for brackets that miss in two ways. */
import { applyEdits } from "../../text/span.ts";
import { MappedText } from "./mappedText.ts";
import { parseMark } from "./parseMark.ts";

/** The inside of a near miss as a mark; undefined where it is a mark already, or none is near. */
export function mendedMark(inside: string): string | undefined {
  const result = parseMark(new MappedText(inside));
  if (!result || "mark" in result || !result.almost.suggestion) return undefined;
  const better = applyEdits(inside, [result.almost.suggestion]);
  const again = parseMark(new MappedText(better));
  return again && "mark" in again ? better : undefined;
}
