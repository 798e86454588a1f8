/** Parts that get too hot to touch under power. */
import type { Guide } from "../../model/guide.ts";
import type { Part } from "../../model/parts.ts";
import { classOf } from "./partDangers.ts";
import { type NamedRange, namedRanges } from "./values.ts";

/** In °C: bare metal burns in a contact of a second (ISO 13732-1, EN 563). */
const TOUCH = 70;
/** In °C: an ordinary room. */
const ROOM = 25;
/** A resistor above this share of its rating is too hot to touch (common practice). */
const SHARE = 0.5;

/** Each hot part with what makes it so. */
export function hotParts(guide: Guide): ReadonlyMap<Part, string> {
  const hot = new Map<Part, string>();
  for (const part of guide.parts) {
    const kind = classOf(part);
    if (kind === "heat sink") hot.set(part, `${part.name} is a heat sink`);
    if (kind === "tube") hot.set(part, `${part.name} is a valve`);
  }
  for (const figure of namedRanges(guide)) {
    const part = figure.subject === undefined ? undefined : guide.find(figure.subject);
    const why = part && heatIn(figure, part);
    if (part && why) hot.set(part, why);
  }
  return hot;
}

function heatIn({ symbol, high, unit }: NamedRange, part: Part): string | undefined {
  if (unit === "°C" && /^t/i.test(symbol) && high > TOUCH) {
    const what = /^tj/i.test(symbol) ? "its junction" : "it";
    return `${part.name} is hot: ${what} reaches ${round(high)} °C, and ${TOUCH} °C burn at a touch`;
  }
  if (unit === "K" && symbol === "rise" && ROOM + high > TOUCH) {
    return `${part.name} rises by ${round(high)} K, and ${TOUCH} °C burn at a touch`;
  }
  const rating = part.line.power?.amount;
  if (unit === "W" && symbol === "P" && rating !== undefined && high > SHARE * rating) {
    return `${part.name} takes ${round(high)} W of its ${round(rating)} W and gets hot`;
  }
  return undefined;
}

function round(amount: number): number {
  return Number(amount.toPrecision(3));
}
