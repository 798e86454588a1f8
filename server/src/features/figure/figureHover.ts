/** What the author sees on pointing at a figure, or at a name in one. */
import type { GuideFigure } from "../../model/figures/figure.ts";
import { textOfPart } from "../../model/figures/formula.ts";
import type { GuideState } from "../../model/guideState.ts";
import { rootSumSquare } from "../../quantity/evaluation/rootSumSquare.ts";
import type { FigureValue } from "../../quantity/evaluation/value.ts";
import { endsOf, printEnds, printLimits, printValue } from "../../quantity/printRange.ts";
import { FIGURE_SYMBOLS } from "../../trade/figureNames.ts";
import { TRADE_FUNCTIONS } from "../../trade/functions/all.ts";
import { escapeMarkdown } from "../escape.ts";
import { describeSupplies, type Hover } from "../hover.ts";
import { describeFunction } from "../tradeFunction.ts";
import { conversions } from "./conversions.ts";
import { figureAt } from "./figureAt.ts";
import { origins, placeText } from "./origin.ts";
import { loadsOf } from "./rail.ts";
import { shopNote } from "./shopNotes.ts";
import { workings } from "./workings.ts";

export function hoverOfFigure(guide: GuideState, uri: string, offset: number): Hover | undefined {
  const found = figureAt(guide, uri, offset);
  if (!found) return undefined;
  const { figure, span, inner } = found;
  if (inner?.kind === "call") {
    const fn = TRADE_FUNCTIONS.get(inner.call.name);
    if (fn) return { span: inner.span, markdown: describeFunction(fn) };
  }
  if (inner?.kind === "name") {
    const meaning = guide.figures.meaning(inner.use, figure.board);
    if (meaning.kind === "figure" && meaning.figure !== figure) {
      return { span: inner.span, markdown: describe(meaning.figure, guide) };
    }
    if (meaning.kind === "part") {
      return { span: inner.span, markdown: describeSupplies([meaning.part], guide) };
    }
  }
  return { span, markdown: describe(figure, guide) };
}

/** Paragraphs on one figure. */
function describe(figure: GuideFigure, guide: GuideState): string {
  const value = figure.evaluation?.value;
  const paragraphs = value
    ? [
        heading(figure, value),
        limits(figure, value),
        formula(figure, guide),
        others(figure, value),
        escapeMarkdown(shopNote(figure, guide)),
      ]
    : [`**${title(figure)}** has no value: ${escapeMarkdown(reason(figure))}`];
  const lines = [...origins(figure, guide), ...(figure.isRail ? loadsOf(figure, guide) : [])];
  if (lines.length > 0) paragraphs.push(lines.join("\n"));
  const { definition } = figure;
  if (definition && definition !== figure) {
    paragraphs.push(`${title(figure)} is ${placeText(definition, guide)}.`);
  }
  return paragraphs.filter((text) => text !== "").join("\n\n");
}

function title({ figure }: GuideFigure): string {
  return escapeMarkdown(figure.name?.text ?? textOfPart(figure, "expression")?.text ?? "");
}

function heading(figure: GuideFigure, value: FigureValue): string {
  const { name, reading } = figure.figure;
  const meaning = name && name.subjects.length > 0 && FIGURE_SYMBOLS.get(name.symbol)?.meaning;
  const what = meaning ? `, ${meaning}` : "";
  switch (reading?.limit) {
    case "below":
      return `**${title(figure)}** reads below ${printValue(value)}${what}`;
    case "above":
      return `**${title(figure)}** reads above ${printValue(value)}${what}`;
    case "value":
    case "between":
      return `**${title(figure)}** reads ${printLimits(value)}${what}`;
    default:
      return `**${title(figure)}** = ${printValue(value)}${what}`;
  }
}

/** Worst case, and beside it what chance makes likely. */
function limits({ figure }: GuideFigure, value: FigureValue): string {
  if (figure.reading || value.min === value.max) return "";
  const likely = printEnds(endsOf(rootSumSquare(value.node)), value.unit).join(" … ");
  const worst = printLimits(value);
  return likely === worst
    ? `Worst case ${worst}.`
    : `Worst case ${worst}; root sum square ${likely}.`;
}

/** The expression, and with numbers put in. */
function formula(figure: GuideFigure, guide: GuideState): string {
  if (figure.formula?.isQuantity) return "";
  const text = textOfPart(figure.figure, "expression")!.text;
  const worked = workings(figure, guide);
  return worked === undefined || worked === text ? code(text) : `${code(text)} = ${code(worked)}`;
}

function others({ figure }: GuideFigure, value: FigureValue): string {
  if (figure.reading) return "";
  const shown = conversions({ value, symbol: figure.name?.symbol });
  const own = printValue(value);
  const different = shown.filter((text) => text !== own);
  return different.length > 0 ? `= ${different.join(" = ")}` : "";
}

function reason({ evaluation, stated }: GuideFigure): string {
  return (evaluation?.problem ?? stated?.problem)?.message ?? "nothing gives it one.";
}

/** In a figure no backtick can stand. */
function code(text: string): string {
  return `\`${text}\``;
}
