/**
 * How a number is written: its digits, decimal sign, groups and letters. So a stated value is held to
 * no more digits than it has, and is written anew in its own style.
 */
import { parseExpression } from "./expression/parse.ts";
import type { NumberLiteral } from "./expression/tree.ts";
import { printAmount } from "./printing.ts";
import { gaugeOf } from "./wireGauge.ts";

export interface WrittenNumber {
  /** In the coherent SI unit; °C for a temperature. */
  readonly amount: number;
  /** Whether an amount is this one, to the digits written. */
  agrees(amount: number): boolean;
  /** The number's stretch of the text, without its unit. */
  readonly span: { readonly start: number; readonly end: number };
  /** That stretch for another amount, in the same unit and style. */
  write(amount: number): string;
}

const PLAIN =
  /^([-+\u2212]?\s*)(\d{1,3}(?:([ \u00a0\u2007\u2009\u202f])\d{3})+|\d*)(?:([.,])(\d+))?(?:([eE])([-+\u2212]?\d+)(?![\p{L}\d]))?/u;
const CODE = /^([-+\u2212]?)(\d+)(\p{L})(\d+)/u;
const GAUGE = /^(?:AWG\s*(\d+)|(\d+)\s*AWG)$/;

/** The number that the whole text is, with its unit; undefined for an expression. */
export function readWritten(text: string): WrittenNumber | undefined {
  const { expression } = parseExpression(text, NOTHING_KNOWN);
  const isNegative = expression?.kind === "negation";
  const literal = isNegative ? expression.of : expression;
  if (literal?.kind !== "number") return undefined;
  if (literal.unit.scale === "gauge") return gauge(text, literal);
  const amount = isNegative ? -literal.amount : literal.amount;
  return code(text, amount, literal.unit.coherent) ?? plain(text, amount, literal);
}

const NOTHING_KNOWN = { functions: new Map(), isBoard: () => false };

function plain(text: string, amount: number, { unit }: NumberLiteral): WrittenNumber | undefined {
  const match = PLAIN.exec(text);
  if (!match || match[0] === "" || text[match[0].length] === "/") return undefined;
  const [written, sign = "", whole = "", group, point, part = "", mark, power = "0"] = match;
  const minus = sign.trim() === "-" ? "-" : "\u2212";
  const figure = Number(`${whole.replace(/\D/g, "")}.${part}`);
  const shift = Number(power.replace("\u2212", "-"));
  // Behind 10k there is a prefix and no unit, so the amount tells.
  const scale =
    figure === 0 ? Number(`1e${shift + unit.exponent}`) * unit.factor : Math.abs(amount) / figure;
  const tail = mark ? mark + power : "";
  return {
    amount,
    agrees: isNear(amount, scale * 10 ** -part.length),
    span: { start: 0, end: written.length },
    write(other) {
      const value = other / scale;
      const digits = Math.abs(value).toFixed(
        decimalsFor(value, whole.replace(/\D/g, "") + part, part.length),
      );
      const [big, small] = digits.split(".");
      const grouped = group ? big!.replace(/\B(?=(\d{3})+$)/g, group) : big!;
      const sign_ = point ?? ".";
      const front = value < 0 && Number(digits) !== 0 ? minus : "";
      return front + (small === undefined ? grouped : grouped + sign_ + small) + tail;
    },
  };
}

/** `4k7`: the letter stands for the point. */
function code(text: string, amount: number, unit: string): WrittenNumber | undefined {
  const match = CODE.exec(text);
  if (!match) return undefined;
  const [written, sign, whole, letter, part] = match as unknown as [
    string,
    string,
    string,
    string,
    string,
  ];
  const figure = Number(`${whole}.${part}`);
  if (figure === 0) return undefined;
  const scale = Math.abs(amount) / figure;
  return {
    amount,
    agrees: isNear(amount, scale * 10 ** -part.length),
    span: { start: 0, end: written.length },
    write(other) {
      const value = other / scale;
      // The letter has room for four digits on each side.
      if (Math.abs(value) < 0.1 || Math.abs(value) >= 1000) return printAmount(other, unit, 6);
      const decimals = Math.max(1, decimalsFor(value, `${whole}${part}`, part.length));
      const text = Math.abs(value).toFixed(decimals).replace(".", letter);
      return (value < 0 ? sign || "-" : "") + text;
    },
  };
}

function gauge(text: string, literal: NumberLiteral): WrittenNumber | undefined {
  const match = GAUGE.exec(text);
  if (!match) return undefined;
  const figure = match[1] ?? match[2]!;
  const start = text.indexOf(figure);
  return {
    amount: literal.amount,
    agrees: (other) => Math.round(gaugeOf(other)) === Number(figure),
    span: { start, end: start + figure.length },
    write: (other) => String(Math.round(gaugeOf(other))),
  };
}

/** Half of the last digit written counts as agreement, and a hair for rounding. */
function isNear(amount: number, step: number): (other: number) => boolean {
  const reach = step / 2;
  return (other) => Math.abs(other - amount) <= reach * (1 + 1e-9) + Math.abs(amount) * 1e-12;
}

/**
 * Decimals for a new value: those written, and more where it has become so much smaller that fewer
 * significant figures would be left. Never fewer, so that the new number agrees with the value.
 */
function decimalsFor(value: number, digits: string, decimals: number): number {
  if (value === 0) return decimals;
  const figures = digits.replace(/^0+/, "").length;
  const needed = figures - 1 - Math.floor(Math.log10(Math.abs(value)));
  return Math.min(15, Math.max(decimals, Math.min(needed, decimals + 6)));
}
