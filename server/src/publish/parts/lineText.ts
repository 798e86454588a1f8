/** A line of the parts list in the words that builder and packer read. */

import type { GuideState } from "../../model/guideState.ts";
import type { ListLine } from "../../model/list/partsList.ts";
import { shownValue } from "../../model/list/shownValue.ts";
import type { Part } from "../../model/parts.ts";
import { formatQuantity } from "../../quantity/formatQuantity.ts";
import type { Language } from "../../text/language.ts";
import { localNumbers } from "../localNumbers.ts";

/** With its board only where another board has the same designator. */
export function shortName({ name, board }: Part, guide: GuideState) {
  return { name, ...(guide.kit.find(name).doubtful && { board }) };
}

/** The value as read, with its tolerance; else as the list tells it. */
export function valueText(line: ListLine, language?: Language): string {
  const { value, tolerance } = line;
  const written = shownValue(line);
  const shown = value ? localNumbers(formatQuantity(value), language) : written;
  // A value cell with more than the value says what the part is: `10k log`, `100n X2`.
  const text = value && /^[\d.,]+\s*[\p{L}µΩ%]*\d*$/u.test(written) ? shown : written;
  // An amount stays with its unit.
  const limits = tolerance?.replace(/ /g, "\u00a0");
  return limits && !text.includes("%") ? `${text} ${limits}` : text;
}

/**
 * The package where it says something: `TO-92` tells parts apart; `Crystal` or `panel` only says what
 * a description says already.
 */
export function tellingPackage(line: ListLine): string {
  const housing = packageName(line);
  return !line.cells.description?.text || /\d/.test(housing) ? housing : "";
}

/** The footprint's name as far as a builder can use it: `TO-92` of `TO-92_Inline`, not a whole path. */
export function packageName({ cells }: ListLine): string {
  const name = cells.package?.text.replace(/^[^:]*:/, "").split("_")[0] ?? "";
  return /^(?:R|C|CP|L|D|LED|PinHeader|Resistor|Capacitor)$/.test(name) ? "" : name;
}
