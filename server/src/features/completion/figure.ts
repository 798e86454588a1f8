/** Completion inside a figure: names in scope, functions, units, and words that a function takes. */

import type { GuideState } from "../../model/guideState.ts";
import { shownValue } from "../../model/list/shownValue.ts";
import type { Part } from "../../model/parts.ts";
import { ARITHMETIC } from "../../quantity/functions.ts";
import { TRADE_FUNCTIONS } from "../../trade/functions/all.ts";
import type { TradeFunction } from "../../trade/functions/function.ts";
import { describeSupplies } from "../hover.ts";
import { describeFunction } from "../tradeFunction.ts";
import { type Completion, type Completions, MOST_ITEMS } from "./completion.ts";
import { figureNames } from "./figureNames.ts";
import { type Call, type FigureWriting, readFigureWriting } from "./figureWriting.ts";
import type { Opening, Writing } from "./writing.ts";

/** Units in the order in which kits need them. */
const UNITS =
  "V mV kV A mA µA Ω kΩ MΩ mΩ W mW F µF nF pF H mH µH nH Hz kHz MHz GHz % °C K K/W mm cm m µm in mil " +
  "N·m cN·m kgf·cm lbf·in N s ms µs min h g kg J mAh Ah dB ppm";

const UNIT_ITEMS: readonly Completion[] = UNITS.split(" ").map((label) => ({
  label,
  kind: "unit",
}));

/** Symbols of the trade with a subject, for names: `P(R50)`. */
const SYMBOLS: readonly (readonly [symbol: string, meaning: string])[] = [
  ["V", "voltage at a part, a pin or a rail"],
  ["I", "current in a part or a rail"],
  ["P", "power in a part"],
  ["R", "resistance of a part"],
  ["C", "capacitance of a part"],
  ["L", "inductance of a part"],
  ["Tj", "junction temperature of a part"],
  ["torque", "torque of a screw, or of what it clamps"],
  ["hole", "hole for a screw"],
  ["turns", "turns of a coil"],
  ["former", "former on which a coil is wound"],
  ["wire", "wire of a coil"],
  ["bend", "where the leads of a part are bent"],
];

export function completeFigure(
  guide: GuideState,
  { inside }: Opening,
  { offset, after }: Writing,
): Completions | undefined {
  const figure = readFigureWriting(inside);
  const items = itemsFor(guide, figure, inside);
  const tail = /^[\p{L}\p{N}_µΩ°]*/u.exec(after)![0];
  const span = { start: offset - figure.typed.length, end: offset + tail.length };
  const complete = items.length < MOST_ITEMS;
  return { span, items: items.slice(0, MOST_ITEMS), complete };
}

/** What may be written behind an expression of the front matter; `typed` is its last word. */
export function expressionItems(guide: GuideState, typed: string): Completion[] {
  return itemsFor(guide, readFigureWriting(typed), typed).filter(({ label }) => label !== "read");
}

function itemsFor(guide: GuideState, figure: FigureWriting, inside: string): Completion[] {
  switch (figure.kind) {
    case "unit":
      return figure.isApart || figure.typed !== "" ? [...UNIT_ITEMS] : UNIT_ITEMS.map(setApart);
    case "argument":
      return argumentItems(guide, figure.call, figure.typed);
    case "name":
      return nameItems(guide, figure.typed, figure.mayRead, inside);
  }
}

/** A unit right behind its number: the space between them is written too. */
function setApart(unit: Completion): Completion {
  return { ...unit, text: ` ${unit.label}` };
}

function argumentItems(guide: GuideState, call: Call, typed: string): Completion[] {
  const trade = TRADE_FUNCTIONS.get(call.name);
  if (!trade) {
    const isSum = ARITHMETIC.has(call.name);
    return isSum ? nameItems(guide, typed, false, typed) : partItems(guide, typed);
  }
  const keys = trade.parameters[call.index]?.keys;
  if (keys) return keys.map((label) => ({ label, kind: "value" }));
  return nameItems(guide, typed, false, typed);
}

function nameItems(
  guide: GuideState,
  typed: string,
  mayRead: boolean,
  inside: string,
): Completion[] {
  const items: Completion[] = figureNames(guide).map(({ name, text, step }) => ({
    label: name,
    kind: "figure",
    detail: text,
    ...(step && { description: `step ${step}` }),
  }));
  if (mayRead) {
    const documentation = () => "A reading that the builder takes: it goes into the test record.";
    items.push({ label: "read", kind: "role", text: "read ", leadsOn: true, documentation });
  }
  if (mayRead || /^\s*read\s+\S*$/.test(inside)) items.push(...symbolItems());
  for (const trade of TRADE_FUNCTIONS.values()) items.push(functionItem(trade));
  for (const name of ARITHMETIC.keys()) {
    items.push({ label: name, kind: "function", text: `${name}(\${1})$0`, isSnippet: true });
  }
  if (typed !== "") items.push(...partItems(guide, typed));
  return items;
}

function symbolItems(): Completion[] {
  return SYMBOLS.map(([symbol, meaning]) => ({
    label: `${symbol}()`,
    kind: "figure",
    detail: meaning,
    text: `${symbol}(\${1})$0`,
    isSnippet: true,
    leadsOn: true,
    filter: symbol,
  }));
}

function functionItem(trade: TradeFunction): Completion {
  const needed = trade.parameters.filter((one) => one.default === undefined);
  const places = needed.map(({ name }, index) => `\${${index + 1}:${name}}`);
  return {
    label: trade.name,
    kind: "function",
    text: `${trade.name}(${places.join("; ")})$0`,
    isSnippet: true,
    documentation: () => describeFunction(trade),
  };
}

/** Designators that begin as typed: in an expression each is its value in the parts list. */
function partItems(guide: GuideState, typed: string): Completion[] {
  const wanted = typed.trim().toLowerCase();
  const found: Part[] = [];
  for (const part of guide.parts) {
    if (part.name.toLowerCase().startsWith(wanted)) found.push(part);
    if (found.length === MOST_ITEMS) break;
  }
  return found.map((part) => ({
    label: part.name,
    kind: "part",
    ...(shownValue(part.line) && { detail: shownValue(part.line) }),
    documentation: () => describeSupplies([part], guide),
  }));
}
