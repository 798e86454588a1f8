/** Parts that get too hot to touch under power. */
import type { GuideFigure } from "../../model/figures/figure.ts";
import type { Part } from "../../model/parts.ts";
import { classOf } from "./partDangers.ts";
import { partOf, rangeOf, symbolOf } from "./values.ts";

/** In °C: bare metal burns in a contact of a second (ISO 13732-1, EN 563). */
const TOUCH = 70;
/** In °C: an ordinary room. */
const ROOM = 25;
/** A resistor above this share of its rating is too hot to touch (common practice). */
const SHARE = 0.5;

/** Whether a figure with this symbol can speak of heat. */
export function isOfHeat(symbol: string): boolean {
  return symbol === "P" || symbol === "rise" || /^t[a-z]?$/i.test(symbol);
}

/** Parts that are there to get hot, each with what it is. */
export function hotByKind(parts: readonly Part[]): ReadonlyMap<Part, string> {
  const hot = new Map<Part, string>();
  for (const part of parts) {
    const kind = classOf(part);
    if (kind === "heat sink") hot.set(part, `${part.name} is a heat sink`);
    if (kind === "tube") hot.set(part, `${part.name} is a valve`);
  }
  return hot;
}

/** Parts that figures tell to be hot, each with why. */
export function hotByFigures(figures: readonly GuideFigure[]): ReadonlyMap<Part, string> {
  const hot = new Map<Part, string>();
  for (const figure of figures) {
    const part = partOf(figure);
    const why = part && heatIn(figure, part);
    if (part && why) hot.set(part, why);
  }
  return hot;
}

function heatIn(figure: GuideFigure, part: Part): string | undefined {
  const symbol = symbolOf(figure);
  const degrees = /^t/i.test(symbol) ? rangeOf(figure, "°C") : undefined;
  if (degrees && degrees.high > TOUCH) {
    const what = /^tj/i.test(symbol) ? "its junction" : "it";
    return `${part.name} is hot: ${what} reaches ${round(degrees.high)} °C, and ${TOUCH} °C burn at a touch`;
  }
  const rise = symbol === "rise" ? rangeOf(figure, "K") : undefined;
  if (rise && ROOM + rise.high > TOUCH) {
    return `${part.name} rises by ${round(rise.high)} K, and ${TOUCH} °C burn at a touch`;
  }
  const power = symbol === "P" ? rangeOf(figure, "W") : undefined;
  const rating = part.line.power?.amount;
  if (power && rating !== undefined && power.high > SHARE * rating) {
    return `${part.name} takes ${round(power.high)} W of its ${round(rating)} W and gets hot`;
  }
  return undefined;
}

function round(amount: number): number {
  return Number(amount.toPrecision(3));
}
