/** What figures show to a reader: values, on demand with range and origin, and readings as fields. */
import type { GuideFigure } from "../model/figures/figure.ts";
import { readingText } from "../model/figures/readingText.ts";
import type { Guide } from "../model/guide.ts";
import type { GuideState } from "../model/guideState.ts";
import type { PieceNode } from "../model/pieceNode.ts";
import type { FigureValue } from "../quantity/evaluation/value.ts";
import { printAmount, printIn, type ShownUnit, writtenUnit } from "../quantity/printing.ts";
import {
  type Ends,
  endsOf,
  figuresOf,
  printEnds,
  printLimits,
  printValue,
} from "../quantity/printRange.ts";
import type { Figure, Reading } from "../syntax/dialect.ts";
import { localNumbers } from "./localNumbers.ts";

export interface ShownFigure {
  readonly text: string;
  /** Its range, and what it is computed from; empty where it is just what it says. */
  readonly details: readonly string[];
}

/** A reading as a field: its limits as numbers in the unit that the builder enters. */
export interface ShownReading {
  /** `V(TP1)` */
  readonly name: string;
  readonly unit: string;
  readonly low: number | undefined;
  readonly high: number | undefined;
  /** `unknown`: the limits cannot be computed, and nothing can be judged by them. */
  readonly limit: "below" | "above" | "between" | "unknown";
  /** The limits with their unit, the lower first; what was written where they are unknown. */
  readonly ends: readonly string[];
}

export function shownFigure(figure: Figure, piece: PieceNode, guide: GuideState): ShownFigure {
  const { name, expression, stated, tolerance, reading } = figure;
  if (reading) return { text: readingText(reading), details: [] };
  const place = placeOf(figure, piece, guide);
  const value = place?.evaluation?.value;
  const written = tolerance ? `${expression?.text} ± ${tolerance.text}` : expression?.text;
  if (!place || !value) return { text: stated?.text ?? written ?? name?.text ?? "", details: [] };
  const isQuantity = place.formula?.isQuantity ?? false;
  const local = (printed: string) => localNumbers(printed, guide.language);
  const rounded = stated?.text ?? statedWhereDefined(place, guide);
  const text = rounded ?? (isQuantity ? expression!.text : local(printValue(value)));
  const range = value.min === value.max ? [] : [local(printLimits(value))];
  // Of a name that is recalled the reader gets what it was defined with.
  const origin = place.definition && place.definition !== place ? place.definition.figure : figure;
  const isSum = !(place.definition?.formula ?? place.formula)?.isQuantity;
  return { text, details: isSum ? [...range, originText(origin)] : range };
}

/** What the author states of the figure that this one does nothing but recall. */
export function statedWhereDefined(
  { figure, formula, board }: GuideFigure,
  guide: Guide,
): string | undefined {
  const recalled = figure.name ? undefined : formula?.names[0];
  if (!recalled) return undefined;
  const meaning = guide.figures.meaning(recalled.use, board);
  if (meaning.kind !== "figure") return undefined;
  const { name, stated } = meaning.figure.figure;
  return name?.text === figure.expression?.text.trim() ? stated?.text : undefined;
}

function originText({ name, expression }: Figure): string {
  const sum = expression?.text ?? "";
  return name && sum !== name.text ? `${name.text} = ${sum}` : sum;
}

export function shownReading(figure: Figure, piece: PieceNode, guide: GuideState): ShownReading {
  const reading = figure.reading!;
  const name = figure.name!.text;
  const value = placeOf(figure, piece, guide)?.evaluation?.value;
  if (!value) {
    const ends = [readingText(reading)];
    return { name, unit: "", low: undefined, high: undefined, limit: "unknown", ends };
  }
  const shown = endsOf({ low: value.min, high: value.max }, 1);
  const low = reading.limit === "below" ? undefined : shown.low;
  const high = reading.limit === "above" ? undefined : shown.high;
  const largest = Math.max(Math.abs(low ?? 0), Math.abs(high ?? 0));
  const written = unitOf(reading, value.unit);
  const { unit, scale } = written
    ? { unit: written.unit, scale: Number(`1e${written.exponent}`) }
    : displayUnit(largest, value.unit);
  const ends = printedEnds(shown, value, written).filter(
    (_, side) => [low, high][side] !== undefined,
  );
  return {
    name,
    unit,
    low: low === undefined ? undefined : scaled(low, scale),
    high: high === undefined ? undefined : scaled(high, scale),
    limit: reading.limit === "value" ? "between" : reading.limit,
    ends: ends.map((end) => localNumbers(end, guide.language)),
  };
}

/** Of a limit without tolerance, as many figures as its inputs give sense to. */
function printedEnds(
  { low, high }: Ends,
  value: FigureValue,
  written: ShownUnit | undefined,
): readonly string[] {
  if (low < high) return printEnds({ low, high }, value.unit, written);
  const figures = Math.max(3, figuresOf(value));
  return [low, high].map((end) =>
    written ? printIn(end, written, figures) : printAmount(end, value.unit, figures),
  );
}

/** The unit that the author reads in, as a meter shows it: `A` of `0.52 A ± 6 %`. */
function unitOf({ value, upTo }: Reading, unit: string): ShownUnit | undefined {
  const behind = /^[+\-\u2212]?\d[\d.,]*[ \u00a0]?(\D+)$/u.exec((upTo ?? value).text);
  return behind ? writtenUnit(behind[1]!, unit) : undefined;
}

function placeOf(figure: Figure, piece: PieceNode, guide: GuideState): GuideFigure | undefined {
  const { start } = figure.span;
  return guide.figures.ofPiece(piece).find((one) => one.figure.span.start === start);
}

/** The unit with the prefix that suits the amount, and how many of the plain unit it is. */
function displayUnit(amount: number, unit: string): { unit: string; scale: number } {
  const [digits, shown] = printAmount(amount, unit, 15).split("\u00a0");
  const number = Number(digits!.replace("\u2212", "-").replace(/\u202f/g, ""));
  if (shown === undefined || !(number > 0)) return { unit: shown ?? "", scale: 1 };
  return { unit: shown, scale: Number((amount / number).toPrecision(6)) };
}

/** Without the dust that division leaves. */
function scaled(amount: number, scale: number): number {
  return Number((amount / scale).toPrecision(9));
}
