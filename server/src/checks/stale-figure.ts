/** A stated value differs from what is computed, beyond the digits written. */
import type { GuideFigure } from "../model/figures/figure.ts";
import { type FigurePart, textOfPart } from "../model/figures/formula.ts";
import type { FigureValue } from "../quantity/evaluation/value.ts";
import { formatQuantity } from "../quantity/formatQuantity.ts";
import { writtenUnit } from "../quantity/printing.ts";
import { printLimits } from "../quantity/printRange.ts";
import { readWritten } from "../quantity/writtenNumber.ts";
import { type Check, type Finding, type Fix, NO_FINDINGS } from "./check.ts";
import { edit, nameOf, shown } from "./figures/problems.ts";

export const check: Check = {
  meta: {
    code: "stale-figure",
    summary: "A stated value differs from what is computed.",
    severity: "warning",
    source: "common practice",
    tags: ["figures"],
  },
  figure(figure) {
    const finding =
      againstExpression(figure) ??
      (figure.role === "stated" ? againstDefinition(figure) : undefined) ??
      (figure.role === "listed" ? againstList(figure) : undefined);
    return finding ? [finding] : NO_FINDINGS;
  },
};

/** `{2 * VCC * Iq = 24 W}` */
function againstExpression(figure: GuideFigure): Finding | undefined {
  const computed = figure.evaluation?.value;
  const stated = figure.stated?.value;
  if (!computed || !stated || agrees(figure, "stated", stated, computed.nominal)) return undefined;
  const written = textOfPart(figure.figure, "stated")!.text;
  const sum = textOfPart(figure.figure, "expression")!.text;
  return {
    at: figure.at("stated"),
    message: () =>
      `This states ${written}, but ${sum} comes to ${shown(computed)}${asWritten(written, computed)}. Write the new value, or correct the expression.`,
    fixes: rewrite(figure, "stated", computed.nominal, true),
  };
}

/** The result in the author's unit as well, where it is shown in no multiple of that: `, or 83 h`. */
function asWritten(text: string, { nominal, unit }: FigureValue): string {
  const written = readWritten(text);
  if (!written) return "";
  const { start, end } = written.span;
  const own = text
    .slice(end)
    .trim()
    .replace(/^u/, "µ")
    .replace(/ohms?$/i, "Ω");
  if (own === "" || writtenUnit(own, unit)) return "";
  return `, or ${text.slice(0, start)}${written.write(nominal)}${text.slice(end)}`;
}

/** The same name with a plain quantity, away from its definition. */
function againstDefinition(figure: GuideFigure): Finding | undefined {
  const definition = figure.definition!;
  const defined = definition.evaluation?.value;
  const own = figure.evaluation?.value;
  if (!defined || !own) return undefined;
  const written = textOfPart(figure.figure, "expression")!.text;
  const related = [
    { at: definition.at(), message: () => `${nameOf(definition)} is defined here.` },
  ];
  if (!agrees(figure, "expression", own, defined.nominal)) {
    // Of two plain quantities in the text either may be the right one.
    const safe = !figure.definition!.formula?.isQuantity || definition.piece === undefined;
    return {
      at: figure.at("expression"),
      message: () =>
        `This states ${written} for ${nameOf(figure)}, which is ${shown(defined)} where it is defined.`,
      related,
      fixes: rewrite(figure, "expression", defined.nominal, safe),
    };
  }
  if (!figure.figure.tolerance || within(defined, own)) return undefined;
  return {
    at: figure.at("tolerance"),
    message: () =>
      `Here ${nameOf(figure)} lies within ${plain(printLimits(own))}, but where it is defined within ${plain(printLimits(defined))}.`,
    related,
  };
}

function againstList(figure: GuideFigure): Finding | undefined {
  const { name, line } = figure.listed!;
  const own = figure.evaluation?.value;
  const listed = line.value!;
  if (!figure.formula?.isQuantity || !own) return undefined;
  if (agrees(figure, "expression", own, listed.amount)) return undefined;
  const written = textOfPart(figure.figure, "expression")!.text;
  return {
    at: figure.at("expression"),
    message: () =>
      `This states ${written} for ${name}, but the parts list says ${plain(formatQuantity(listed))}. Correct the wrong one.`,
    related: [
      {
        at: { uri: figure.listed!.list.uri, span: line.cells.value?.span ?? line.span },
        message: () => `The list gives ${name} here.`,
      },
    ],
    fixes: rewrite(figure, "expression", listed.amount, false),
  };
}

/** Whether an amount is what the text says, to its digits; of an expression, all but rounding. */
function agrees(
  figure: GuideFigure,
  part: FigurePart,
  stated: FigureValue,
  amount: number,
): boolean {
  const written = readWritten(textOfPart(figure.figure, part)!.text);
  if (written) return written.agrees(amount);
  return Math.abs(stated.nominal - amount) <= 1e-6 * Math.max(Math.abs(amount), 1e-30);
}

/** Limits agree to about a thousandth; nobody writes tolerances closer. */
function within(inner: FigureValue, outer: FigureValue): boolean {
  const hair = 1e-3 * Math.max(outer.max - outer.min, Math.abs(outer.nominal) * 1e-3);
  return inner.min >= outer.min - hair && inner.max <= outer.max + hair;
}

function rewrite(
  figure: GuideFigure,
  part: FigurePart,
  amount: number,
  safe: boolean,
): (() => Fix)[] {
  const text = textOfPart(figure.figure, part)!.text;
  const written = readWritten(text);
  if (!written) return [];
  const number = written.write(amount);
  const { start, end } = written.span;
  const title = `Write ${text.slice(0, start)}${number}${text.slice(end)}`;
  return [() => edit(figure, part, written.span, number, title, safe)];
}

function plain(text: string): string {
  return text.replaceAll("\u00a0", " ");
}
