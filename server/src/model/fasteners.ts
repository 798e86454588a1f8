/** Screws, nuts and washers among the hardware, read once a line. */
import { type Fastener, readFastener } from "../trade/fasteners/fastener.ts";
import type { ListLine } from "./list/partsList.ts";
import type { Hardware } from "./parts.ts";

const KNOWN = new WeakMap<ListLine, { readonly fastener: Fastener | undefined }>();

/** What fastens there; undefined for hardware that fastens nothing. */
export function fastenerOf({ line }: Hardware): Fastener | undefined {
  let known = KNOWN.get(line);
  if (!known) {
    const { value, description, "part number": number } = line.cells;
    const text = [value, description, number].map((cell) => cell?.text ?? "").join(" ");
    known = { fastener: readFastener(text) };
    KNOWN.set(line, known);
  }
  return known.fastener;
}
