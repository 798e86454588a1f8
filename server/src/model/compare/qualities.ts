/** What is compared of a part, in a form in which spelling makes no difference. */
import { formatQuantity } from "../../quantity/formatQuantity.ts";
import { readValue } from "../../quantity/readValue.ts";
import type { Quantity } from "../../quantity/value.ts";
import { readDesignator } from "../../syntax/designators.ts";
import type { ListedDesignator, ListLine } from "../list/partsList.ts";

export const QUALITIES = [
  "value",
  "tolerance",
  "power",
  "voltage",
  "current",
  "package",
  "height",
  "side",
  "fitted",
  "optional",
] as const;
export type Quality = (typeof QUALITIES)[number];

/** One quality of a part: `key` is equal where the same is meant, `text` is for the reader. */
export interface Told {
  readonly key: string;
  readonly text: string;
}

export type ToldQualities = { readonly [quality in Quality]?: Told };

/** Reads the qualities of parts, those of equal lines once: lists repeat them. */
export class QualityReader {
  readonly #known = new Map<string, ToldQualities>();

  /** The same object for two parts of which the same is told in the same words. */
  read(line: ListLine, listed: ListedDesignator): ToldQualities {
    const key = wordsOf(line, listed);
    const known = this.#known.get(key);
    if (known) return known;
    const qualities = qualitiesOf(line, listed);
    this.#known.set(key, qualities);
    return qualities;
  }
}

/** All that the qualities are made of. */
function wordsOf(line: ListLine, listed: ListedDesignator): string {
  const { cells, tolerance = "", power, voltage, current, height = "", side = "" } = line;
  const letters = readDesignator(listed.name)?.letters ?? "";
  const optional = line.optional || listed.optional === true;
  const ratings = `${amountOf(power)}\n${amountOf(voltage)}\n${amountOf(current)}`;
  const words = `${cells.value?.text ?? ""}\n${cells.description?.text ?? ""}\n${cells.package?.text ?? ""}`;
  return `${letters}\n${words}\n${tolerance}\n${ratings}\n${height}\n${side}\n${line.fitted}\n${optional}`;
}

function amountOf(found: Quantity | undefined): string {
  return found ? `${found.amount} ${found.unit}` : "";
}

function qualitiesOf(line: ListLine, listed: ListedDesignator): ToldQualities {
  const { tolerance, power, voltage, current, height, side } = line;
  return withoutBlanks({
    value: toldValue(line, listed),
    tolerance: tolerance === undefined ? undefined : plain(tolerance),
    power: quantity(power),
    voltage: quantity(voltage),
    current: quantity(current),
    package: toldPackage(line),
    height: height === undefined ? undefined : told(String(height), `${height} mm`),
    side: side && plain(side),
    fitted: line.fitted ? plain("yes") : plain("no"),
    optional: plain(line.optional || listed.optional ? "yes" : "no"),
  });
}

/**
 * The value as a quantity and what else its cell says: a dielectric, a taper, a type. Read by the
 * part's own letters, since another grouping may put it beside parts of another class.
 */
function toldValue(line: ListLine, listed: ListedDesignator): Told | undefined {
  const { value, description } = line.cells;
  const text = value?.text || description?.text || "";
  if (text === "") return undefined;
  const read = readValue(text, readDesignator(listed.name)?.letters ?? "");
  if (!read.value) return plain(text);
  const { amount, unit } = read.value;
  // Seven figures swallow rounding and part all series of preferred values.
  return told(`${Number(amount.toPrecision(7))} ${unit} ${fold(read.rest)}`, text);
}

/** The footprint without the library it comes from. */
function toldPackage(line: ListLine): Told | undefined {
  const text = line.cells.package?.text ?? "";
  return text === "" ? undefined : told(fold(text.replace(/^[^:]*:/, "")), text);
}

function quantity(found: Quantity | undefined): Told | undefined {
  if (!found) return undefined;
  return told(`${Number(found.amount.toPrecision(7))} ${found.unit}`, formatQuantity(found));
}

function plain(text: string): Told {
  return told(fold(text), text);
}

function told(key: string, text: string): Told {
  return { key, text: text.replace(/\s+/g, " ") };
}

/** Case, blanks and the two signs of micro and ohm are spelling. */
export function fold(text: string): string {
  return text.normalize("NFKC").toLowerCase().replace(/\s+/g, "").replace(/μ/g, "µ");
}

function withoutBlanks(all: { [quality in Quality]?: Told | undefined }): ToldQualities {
  return Object.fromEntries(Object.entries(all).filter(([, one]) => one !== undefined));
}
