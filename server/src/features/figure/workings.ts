/** A figure's formula with numbers put in for its names. */
import type { GuideFigure, Meaning } from "../../model/figures/figure.ts";
import { textOfPart } from "../../model/figures/formula.ts";
import type { Guide } from "../../model/guide.ts";
import type { FigureValue } from "../../quantity/evaluation/value.ts";
import { formatQuantity } from "../../quantity/formatQuantity.ts";
import { printValue } from "../../quantity/printRange.ts";

/** `(45 mA)^2 * 4.7 kΩ` for `Iq^2 * R50`; undefined where nothing is put in. */
export function workings(figure: GuideFigure, guide: Guide): string | undefined {
  const text = textOfPart(figure.figure, "expression")?.text ?? "";
  let out = "";
  let done = 0;
  for (const { part, use } of figure.formula?.names ?? []) {
    if (part !== "expression") continue;
    const number = numberOf(guide.figures.meaning(use, figure.board));
    if (number === undefined) continue;
    const { start, end } = use.span;
    // A unit or a sign beside an operator that binds closer needs brackets.
    const isAlone = text.trim().length === end - start;
    const raised = /^\s*[\^²³]/.test(text.slice(end));
    const bracketed = !isAlone && (raised || number.startsWith("\u2212"));
    out += text.slice(done, start) + (bracketed ? `(${number})` : number);
    done = end;
  }
  return done === 0 ? undefined : out + text.slice(done);
}

/** What a name comes to, as it is printed. */
export function numberOf(meaning: Meaning): string | undefined {
  if (meaning.kind === "figure") {
    const value: FigureValue | undefined = meaning.figure.evaluation?.value;
    return value && printValue(value);
  }
  if (meaning.kind !== "part") return undefined;
  const { value } = meaning.part.line;
  return value && formatQuantity(value);
}
