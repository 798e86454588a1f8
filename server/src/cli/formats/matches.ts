/** Matched sets as text for people, as CSV with a row for each part, and as JSON. */
import type { Lot } from "../../features/matching/readReadings.ts";
import { csvText } from "../../text/csvText.ts";
import type { MatchedSets } from "../../trade/matching/bestSets.ts";
import type { WholeReadings } from "../../trade/matching/readings.ts";
import { type Column, formatTable } from "../table.ts";
import { printable, type Terminal } from "../terminal.ts";

export function formatMatches(
  lot: Lot,
  best: MatchedSets,
  { inUnits }: Pick<WholeReadings, "inUnits">,
  format: "text" | "csv" | "json",
  paint: Terminal["paint"],
): string {
  const sets = best.sets.map((places, index) => ({
    spread: inUnits(best.spreads[index]!),
    parts: places.map((place) => lot.readings[place]!),
  }));
  const left = best.left.map((place) => lot.readings[place]!);
  const { unit, column } = lot;
  if (format === "json") {
    const total = inUnits(best.total);
    const told = {
      column,
      unit,
      sets: sets.map(shown),
      total,
      left: left.map(part),
      tied: best.isTied,
    };
    return `${JSON.stringify(told, undefined, 2)}\n`;
  }
  if (format === "csv") {
    const picked = sets.flatMap(({ parts, spread }, index) =>
      parts.map(({ label, figures }) => [label, Number(figures), unit, index + 1, spread]),
    );
    const rest = left.map(({ label, figures }) => [label, Number(figures), unit, "", ""]);
    return csvText([["part", "reading", "unit", "set", "spread"], ...picked, ...rest]);
  }
  return asText();

  function asText(): string {
    const rows = sets.map(({ parts, spread }, index) => ({
      set: index + 1,
      spread: withUnit(spread, unit),
      parts: parts.map(({ label, figures }) => `${label} (${figures})`),
    }));
    const largest = Math.max(...sets.map(({ spread }) => spread));
    const count = `${lot.readings.length} readings from column ${column}`;
    const lines = [
      `${printable(count)}${unit ? `, in ${printable(unit)}` : ""}\n`,
      formatTable(rows, COLUMNS, "text", paint),
      `Spread of all sets together: ${printable(withUnit(inUnits(best.total), unit))}, at most ${printable(withUnit(largest, unit))} in a set.`,
    ];
    if (left.length > 0) {
      lines.push(`Left over: ${printable(left.map(({ label }) => label).join(", "))}.`);
    }
    if (best.isTied) lines.push(TIE);
    return `${lines.join("\n")}\n`;
  }
}

const TIE =
  "Another choice has the same sum. This one has the smallest greatest spread, or else the lower readings.";

type Row = Readonly<{
  set: number;
  spread: string;
  parts: readonly string[];
}>;

const COLUMNS: readonly Column<Row>[] = [
  { field: "set", title: "Set" },
  { field: "spread", title: "Spread" },
  { field: "parts", title: "Parts (readings)" },
];

interface Reading {
  readonly label: string;
  readonly figures: string;
}

function shown({ parts, spread }: { parts: readonly Reading[]; spread: number }) {
  return { parts: parts.map(part), spread };
}

function part({ label, figures }: Reading) {
  return { part: label, reading: Number(figures) };
}

function withUnit(amount: number, unit: string): string {
  return unit ? `${amount} ${unit}` : String(amount);
}
