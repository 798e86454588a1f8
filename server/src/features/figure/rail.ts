/** What is declared on a rail: the currents and powers of figures that name it. */
import type { GuideFigure } from "../../model/figures/figure.ts";
import type { Guide } from "../../model/guide.ts";
import { sumOf } from "../../quantity/evaluation/sumOf.ts";
import { type FigureValue, hasUnit } from "../../quantity/evaluation/value.ts";
import { printLimits, printValue } from "../../quantity/printRange.ts";
import { escapeMarkdown } from "../escape.ts";

/** `- Currents: 7 mA (6 mA … 8 mA): I(VCC, R1), I(VCC, R2)`, and so for powers. */
export function loadsOf(rail: GuideFigure, guide: Guide): readonly string[] {
  const name = rail.figure.name?.text;
  if (name === undefined) return [];
  return [load("Currents", "I", "A", name, guide), load("Powers", "P", "W", name, guide)].flat();
}

function load(title: string, symbol: string, unit: string, rail: string, guide: Guide): string[] {
  const named = guide.figures
    .about(symbol, rail)
    .filter((one) => one.evaluation?.value && hasUnit(one.evaluation.value, unit));
  // I(VCC) alone is the whole that the author has declared, and no share of it.
  const whole = named.filter((one) => one.figure.name!.subjects.length === 1);
  const shares = named.filter((one) => one.figure.name!.subjects.length > 1);
  const lines: string[] = [];
  if (shares.length > 0) {
    const names = shares.map((one) => escapeMarkdown(one.figure.name!.text)).join(", ");
    const total = sumOf(shares.map(worth));
    if (total) lines.push(`- ${title} on it: ${shown(total)}, from ${names}`);
  }
  for (const one of whole) {
    lines.push(`- ${escapeMarkdown(one.figure.name!.text)}: ${shown(worth(one))}`);
  }
  return lines;
}

function worth(figure: GuideFigure): FigureValue {
  return figure.evaluation!.value!;
}

function shown(value: FigureValue): string {
  const limits = value.min < value.max ? ` (${printLimits(value)})` : "";
  return `${printValue(value)}${limits}`;
}
