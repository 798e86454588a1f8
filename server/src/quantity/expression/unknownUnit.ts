/** What a word after a number, which is no unit, may have been meant for. */
import { slips } from "../../text/nearest.ts";
import type { Span } from "../../text/span.ts";
import { FigureError } from "../problem.ts";
import { unitSymbols } from "../unitMeanings.ts";
import { readUnit } from "../units.ts";
import { foldText } from "../words.ts";

/** The error for the number at `start` with the word at `span` after it. */
export function unknownUnit(text: string, start: number, span: Span): FigureError {
  const word = text.slice(span.start, span.end);
  const message = explained(word);
  if (message) return new FigureError({ kind: "form", span, message });
  const isCall = /^\s*\(/.test(text.slice(span.end));
  const meant = isCall ? undefined : meantUnit(word);
  if (!meant) return missingSign(text, start, span, word);
  return new FigureError({
    kind: "form",
    span,
    message: `${word} is no unit that can be computed with. Did you mean ${meant}?`,
    suggestion: { title: `Write ${meant}`, span, text: meant },
  });
}

/** Units that often follow a prefix which stands alone. */
const AFTER_PREFIX: { readonly [prefix: string]: string } = {
  k: "kΩ, kHz or kV",
  M: "MΩ or MHz",
  G: "GΩ or GHz",
  µ: "µF, µH or µA",
  u: "µF, µH or µA",
  n: "nF, nH or nA",
  p: "pF",
};

function explained(word: string): string | undefined {
  const usual = AFTER_PREFIX[word.replace("\u03bc", "µ")];
  if (usual) return `${word} is a prefix, and no unit follows it. Write ${usual}.`;
  if (/^(?:°F|degF)$/.test(word)) {
    return "Temperatures are computed in °C. Take 32 off the degrees Fahrenheit and divide by 1.8.";
  }
  return undefined;
}

/** Names of units, and what people write for a symbol that is hard to type. */
const NAMES: readonly (readonly [RegExp, string])[] = [
  [/^(?:inch(?:es)?|zoll|pouces?)$/i, "in"],
  [/^(?:foot|feet)$/i, "ft"],
  [/^(?:sec|seconds?|sek|sekunden?|secondes?)$/i, "s"],
  [/^(?:minutes?|minuten?)$/i, "min"],
  [/^(?:hrs?|hours?|std|stunden?|heures?)$/i, "h"],
  [/^(?:degc|celsius)$/i, "°C"],
  [/^kelvins?$/i, "K"],
  [/^(?:in-?lbf?s?|lbf?-?in)$/i, "lbf·in"],
  [/^(?:ft-?lbf?s?|lbf?-?ft)$/i, "lbf·ft"],
  [/^(?:oz-?in|in-?oz)$/i, "ozf·in"],
  [/^kgf?-?cm$/i, "kgf·cm"],
  [/^O$/, "Ω"],
  [/^[kK]O$/, "kΩ"],
  [/^MO$/, "MΩ"],
];

function meantUnit(word: string): string | undefined {
  const named = NAMES.find(([name]) => name.test(word));
  if (named) return named[1];
  const spelled = readUnit(foldText(word));
  const prefix = spelled && PREFIXES[spelled.exponent];
  return prefix === undefined ? nearest(word) : prefix + spelled!.unit;
}

/** A symbol in another case, or a long one with one slip: `Vin` is no slip for `min`. */
function nearest(word: string): string | undefined {
  const lower = word.toLowerCase();
  let near: string | undefined;
  for (const symbol of unitSymbols()) {
    if (symbol.toLowerCase() === lower) return symbol;
    const isLong = word.length >= 4 && symbol.length >= 3;
    if (isLong && slips(lower, symbol.toLowerCase()) === 1) near ??= symbol;
  }
  return near;
}

const PREFIXES: { readonly [exponent: number]: string } = {
  [-12]: "p",
  [-9]: "n",
  [-6]: "µ",
  [-3]: "m",
  0: "",
  3: "k",
  6: "M",
  9: "G",
};

function missingSign(text: string, start: number, span: Span, word: string): FigureError {
  const number = text.slice(start, span.start).trim();
  const product = `${number} * ${word}`;
  return new FigureError({
    kind: "form",
    span,
    message: `${word} is no unit that can be computed with. If a product is meant, write ${product}.`,
    suggestion: {
      title: `Write ${product}`,
      span: { start: start + number.length, end: span.start },
      text: " * ",
    },
  });
}
