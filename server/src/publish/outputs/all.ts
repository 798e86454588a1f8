/** All outputs, in the order in which they are written. A new one is added here and nowhere else. */
import { GUIDE } from "./guide.ts";
import { JSON_MODEL } from "./json.ts";
import { MARKDOWN } from "./markdown.ts";
import { NARRATION } from "./narration.ts";
import type { Output } from "./output.ts";
import { PACKING } from "./packing.ts";
import { RECORD } from "./record.ts";
import { TOOLS } from "./tools.ts";

const ALL = [
  GUIDE,
  PACKING,
  TOOLS,
  RECORD,
  MARKDOWN,
  JSON_MODEL,
  NARRATION,
] as const satisfies readonly Output[];

export type OutputName = (typeof ALL)[number]["name"];

export const OUTPUTS: readonly (Output & { readonly name: OutputName })[] = ALL;

export const OUTPUT_NAMES: readonly OutputName[] = OUTPUTS.map(({ name }) => name);
