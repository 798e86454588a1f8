/** What is compared of a part, in a form in which spelling makes no difference. */
import { formatQuantity } from "../../quantity/formatQuantity.ts";
import { readValue } from "../../quantity/readValue.ts";
import type { Quantity } from "../../quantity/value.ts";
import { readDesignator } from "../../syntax/designators.ts";
import type { ListedDesignator, ListLine, PartsList } from "../list/partsList.ts";

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

export function qualitiesOf(line: ListLine, listed: ListedDesignator): ToldQualities {
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

/** Whether the list tells this of any of its parts. */
export function tells({ lines }: PartsList, quality: Quality): boolean {
  return lines.some((line) => line.designators.length > 0 && isTold(line, quality));
}

function isTold(line: ListLine, quality: Quality): boolean {
  if (quality === "value") return valueText(line) !== "";
  return quality === "package" ? line.text("package") !== "" : line[quality] !== undefined;
}

/** Whether the lines tell the same of a part in the same words. */
export function isToldAlike(a: ListLine, b: ListLine): boolean {
  return (
    a.fitted === b.fitted &&
    a.optional === b.optional &&
    a.tolerance === b.tolerance &&
    a.height === b.height &&
    a.side === b.side &&
    isSameRating(a.power, b.power) &&
    isSameRating(a.voltage, b.voltage) &&
    isSameRating(a.current, b.current) &&
    valueText(a) === valueText(b) &&
    a.text("package") === b.text("package")
  );
}

function isSameRating(a: Quantity | undefined, b: Quantity | undefined): boolean {
  return a === b || (a?.amount === b?.amount && a?.unit === b?.unit);
}

/** Where no value is listed, the description tells it. */
function valueText(line: ListLine): string {
  return line.text("value") || line.text("description");
}

/**
 * The value as a quantity and what else its cell says: a dielectric, a taper, a type. Read by the
 * part's own letters, since another grouping may put it beside parts of another class.
 */
function toldValue(line: ListLine, listed: ListedDesignator): Told | undefined {
  const text = valueText(line);
  if (text === "") return undefined;
  const read = readValue(text, readDesignator(listed.name)?.letters ?? "");
  if (!read.value) return plain(text);
  const { amount, unit } = read.value;
  // Seven figures swallow rounding and part all series of preferred values.
  return told(`${Number(amount.toPrecision(7))} ${unit} ${fold(read.rest)}`, text);
}

/** The footprint without the library it comes from. */
function toldPackage(line: ListLine): Told | undefined {
  const text = line.text("package");
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
