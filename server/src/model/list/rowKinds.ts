/** Which rows of a list are titles, totals and hardware, and which text names a thing. */
import type { DesignatorList } from "../../syntax/designatorItems.ts";
import { readAmount } from "./amounts.ts";
import type { Meaning } from "./partsList.ts";
import type { RowView } from "./rowView.ts";

/** Cells that tell what is supplied. */
const NAMING: readonly Meaning[] = ["value", "description", "part number", "package"];

const TOTAL =
  /^(?:grand )?(?:total|totals|sum|subtotal|summe|gesamt|gesamtsumme|insgesamt|somme|suma|totaal|som)\b.{0,20}$/iu;

/** Words in the designator column that name a thing to pack, not a place on a board. */
const THINGS =
  /^(?:pcbs?|board|platine|leiterplatte|circuit board|printplaat|placa|case|box|enclosure|housing|geh(?:ä|ae)use|boitier|caja|kast|knobs?|screws?|nuts?|bolts?|washers?|spacers?|stand-?offs?|feet|wires?|cables?|solder|heat-?sinks?|sockets?|jumpers?|labels?|manual|panel|frontplate|faceplate|hardware|misc|other|mech|mechanical|battery|batteries|lid|bag|kit|n\/?a|none)$/iu;

/** Metric screws: M3, M3x10. */
const SCREW = /^M\d{1,2}(?:[.,]\d)?(?:x\d{1,3})?$/i;

/** Whether a cell of the row tells what is supplied. */
export function hasName(view: RowView): boolean {
  return NAMING.some((meaning) => view.text(meaning) !== "");
}

const SAYS_SOMETHING = /[\p{L}\p{N}]/u;

/** Nothing in the row, a ruled line, or a single cell that heads or ends what is listed. */
export function isTitle(view: RowView, list: DesignatorList): boolean {
  if (list.names.length > list.words) return false;
  if (!view.texts.some((text) => SAYS_SOMETHING.test(text))) return !hasSeparators(list);
  const place = view.texts.findIndex((text) => text !== "");
  if (view.texts.some((text, i) => i > place && text !== "")) return false;
  if (view.columns.width === 1) return list.names.length === 0;
  const meaning = view.layout.meaningAt(place);
  return place === 0 || meaning === undefined || !isNaming(meaning);
}

function hasSeparators(list: DesignatorList): boolean {
  return list.empty > 0 && list.names.length === 0;
}

function isNaming(meaning: Meaning): boolean {
  return meaning !== "package" && NAMING.includes(meaning);
}

/** A row without designators that holds a count and nothing that could be counted. */
export function isTotal(view: RowView, list: DesignatorList): boolean {
  if (list.names.length > list.words || hasSeparators(list)) return false;
  if (view.texts.some((text) => TOTAL.test(text))) return true;
  return view.texts.every((text) => readAmount(text).kind !== "unread");
}

/** Whether the text in the designator column names hardware: `PCB`, `M3x10`, `KNOB` four times. */
export function isHardwareName(view: RowView, list: DesignatorList): boolean {
  const text = view.text("designator");
  if (list.names.every(({ name }) => SCREW.test(name))) {
    return list.remarks.length > 0 || list.names.some(({ name }) => /x/i.test(name));
  }
  if (list.words < list.names.length) return false;
  if (THINGS.test(text)) return true;
  const amount = readAmount(view.text("quantity"));
  return amount.kind === "pieces" && amount.count > 0 && amount.count !== list.names.length;
}
