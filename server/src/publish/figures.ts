/** What a figure shows to a reader: its value, and on demand the range that it can have. */
import { evaluate } from "../quantity/evaluation/evaluate.ts";
import type { FigureValue } from "../quantity/evaluation/value.ts";
import { parseExpression } from "../quantity/expression/parse.ts";
import { endsOf, figuresOf, printAmount } from "../quantity/printing.ts";
import { FigureError } from "../quantity/problem.ts";
import type { Figure, StatedText } from "../syntax/dialect.ts";
import type { FrontMatter } from "../syntax/frontMatter.ts";
import { TRADE_FUNCTIONS } from "../trade/functions/all.ts";

export interface ShownFigure {
  readonly text: string;
  /** The range of the value; undefined where it has none. */
  readonly range: string | undefined;
}

/** A reading as a field: its limits as numbers in the unit that the builder enters. */
export interface ShownReading {
  readonly name: string;
  readonly unit: string;
  readonly low: number | undefined;
  readonly high: number | undefined;
  /** The limits with their unit. */
  readonly limit: "below" | "above" | "between" | "unknown";
  readonly ends: readonly string[];
}

const CONTEXT = { functions: TRADE_FUNCTIONS, isBoard: () => false };

/** Names stand for nothing here: readings state their limits as plain quantities. */
const NO_NAMES = {
  functions: TRADE_FUNCTIONS,
  resolve: () => undefined,
  unknown: ({ span }: { readonly span: { readonly start: number; readonly end: number } }) =>
    new FigureError({ kind: "name", span, message: "" }),
};

export class FigureReader {
  readonly #given: ReadonlyMap<string, string>;

  constructor({ supply, figures }: FrontMatter) {
    this.#given = new Map([...supply, ...figures].map(({ name, value }) => [name, value]));
  }

  shown(figure: Figure): ShownFigure {
    if (figure.reading) return { text: this.#readingText(figure), range: undefined };
    const { name, expression, stated, tolerance } = figure;
    if (stated) return { text: stated.text, range: undefined };
    const text = expression?.text ?? this.#given.get(name!.text) ?? name!.text;
    const value = quantityOf(text, tolerance?.text);
    if (!value) return { text: tolerance ? `${text} ± ${tolerance.text}` : text, range: undefined };
    const shown = printAmount(value.nominal, value.unit, figuresOf(value));
    const range = value.min === value.max ? undefined : rangeOf(value).join(" … ");
    return { text: shown, range };
  }

  reading({ name, reading }: Figure): ShownReading {
    const { limit, value, tolerance, upTo } = reading!;
    const first = quantityOf(value.text, tolerance?.text);
    const last = upTo ? quantityOf(upTo.text, undefined) : first;
    const unknown = {
      name: name!.text,
      unit: "",
      low: undefined,
      high: undefined,
      limit: "unknown",
      ends: [limitText(value, tolerance, upTo)],
    } as const;
    if (!first || !last) return unknown;
    const low = limit === "below" ? undefined : first.min;
    const high = limit === "above" ? undefined : last.max;
    const { unit, scale } = displayUnit(
      Math.max(Math.abs(low ?? 0), Math.abs(high ?? 0)),
      first.unit,
    );
    const figures = Math.max(figuresOf(first), figuresOf(last));
    const ends = [low, high].flatMap((end) =>
      end === undefined ? [] : [printAmount(end, first.unit, figures)],
    );
    return {
      name: name!.text,
      unit,
      low: low === undefined ? undefined : scaled(low, scale),
      high: high === undefined ? undefined : scaled(high, scale),
      limit: limit === "value" ? "between" : limit,
      ends,
    };
  }

  #readingText(figure: Figure): string {
    const { value, tolerance, upTo, limit } = figure.reading!;
    const sign = limit === "below" ? "< " : limit === "above" ? "> " : "";
    return sign + limitText(value, tolerance, upTo);
  }
}

function limitText(value: StatedText, tolerance?: StatedText, upTo?: StatedText): string {
  if (upTo) return `${value.text} … ${upTo.text}`;
  return tolerance ? `${value.text} ± ${tolerance.text}` : value.text;
}

function quantityOf(text: string, tolerance: string | undefined): FigureValue | undefined {
  const [plain, given] = text.split("±");
  const share = tolerance ?? given?.trim();
  return evaluate(
    {
      value: parseExpression(plain!.trim(), CONTEXT),
      ...(share !== undefined && { tolerance: parseExpression(share, CONTEXT) }),
    },
    NO_NAMES,
  ).value;
}

function rangeOf(value: FigureValue): readonly string[] {
  return endsOf(value.min, value.max, value.unit, figuresOf(value));
}

/** The unit with the prefix that suits the amount, and how many of the plain unit it is. */
function displayUnit(amount: number, unit: string): { unit: string; scale: number } {
  const [digits, shown] = printAmount(amount, unit, 15).split("\u00a0");
  const number = Number(digits!.replace("\u2212", "-").replace(/\u202f/g, ""));
  if (shown === undefined || !(number > 0)) return { unit: shown ?? "", scale: 1 };
  // A power of ten, or one for units that take no prefix.
  return { unit: shown, scale: Number((amount / number).toPrecision(6)) };
}

/** Without the dust that division leaves. */
function scaled(amount: number, scale: number): number {
  return Number((amount / scale).toPrecision(9));
}
