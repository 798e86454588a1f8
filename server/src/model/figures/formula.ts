/** What a figure says, parsed: its expression, tolerance, stated value and limits. */
import type { Sum, SumPart } from "../../quantity/evaluation/evaluate.ts";
import { type ParseContext, parseExpression } from "../../quantity/expression/parse.ts";
import { isQuantity, type NameUse, namesIn } from "../../quantity/expression/tree.ts";
import { readWholeUnit } from "../../quantity/unitText.ts";
import type { Figure, StatedText } from "../../syntax/dialect.ts";

/** The texts that make up a figure; a problem or a link stands in one of them. */
export type FigurePart = SumPart | "stated";

/** The texts of one sum of a figure. */
export interface SumTexts {
  readonly expression: string;
  readonly tolerance?: string | undefined;
  readonly upTo?: string | undefined;
  readonly isReading?: boolean;
}

/** A sum parsed from its texts. */
export interface Formula extends Sum {
  /** One number with its unit: it states a quantity and computes nothing. */
  readonly isQuantity: boolean;
  /** All names in it, in their order. */
  readonly names: readonly PlacedName[];
}

/** A name and the text of the sum that it stands in. */
export interface PlacedName {
  readonly part: SumPart;
  readonly use: NameUse;
}

export function parseFormula(texts: SumTexts, context: ParseContext): Formula {
  const names: PlacedName[] = [];
  const parse = (part: SumPart) => {
    const text = part === "expression" ? withUnit(texts) : texts[part];
    if (text === undefined) return undefined;
    const parsed = parseExpression(text, context);
    if (parsed.expression) for (const use of namesIn(parsed.expression)) names.push({ part, use });
    return parsed;
  };
  const [expression, tolerance, upTo] = (["expression", "tolerance", "upTo"] as const).map(parse);
  return {
    expression: expression!,
    ...(tolerance && { tolerance }),
    ...(upTo && { upTo }),
    ...(texts.isReading && { isReading: true }),
    isQuantity: expression!.expression
      ? isQuantity(expression!.expression)
      : BEGINS_WITH_NUMBER.test(texts.expression),
    names,
  };
}

/** In `5 … 6 mV` the lower end is in the unit of the upper one. */
function withUnit({ expression, upTo }: SumTexts): string {
  if (upTo === undefined || !BARE_NUMBER.test(expression)) return expression;
  const unit = upTo.replace(LEADING_NUMBER, "").trim();
  return unit !== "" && readWholeUnit(unit) ? `${expression} ${unit}` : expression;
}

const BARE_NUMBER = /^[-+\u2212]?\s*\d[\d.,\u00a0\u2009\u202f ]*$/;
const LEADING_NUMBER = /^[-+\u2212]?\s*\d[\d.,\u00a0\u2009\u202f ]*/;

/** A text that cannot be read was meant as a quantity if it begins like one. */
const BEGINS_WITH_NUMBER = /^[-+\u2212]?\s*[\d.,]/;

/** The text of one part of a figure. */
export function textOfPart(figure: Figure, part: FigurePart): StatedText | undefined {
  const { reading } = figure;
  switch (part) {
    case "expression":
      return reading?.value ?? figure.expression;
    case "tolerance":
      return reading ? reading.tolerance : figure.tolerance;
    case "stated":
      return figure.stated;
    case "upTo":
      return reading?.upTo;
  }
}

/**
 * `{clearanceHole(M3) = 3.4 mm}` has the form of a name with its value, but is a call of a function
 * and what it should give.
 */
export function callsFunction(figure: Figure, functions: { has(name: string): boolean }): Figure {
  const { name, expression, stated, reading, tolerance, ...rest } = figure;
  const isCall = name && name.subjects.length > 0 && functions.has(name.symbol);
  if (!isCall || reading || stated || tolerance || !expression) return figure;
  return { ...rest, expression: { text: name.text, span: name.span }, stated: expression };
}
