/** Tolerances in value texts: `±1 %`, `+80/-20%`, and the letters of IEC 60062:2016. */

/** A tolerance and where it stands in the text. */
export interface FoundTolerance {
  readonly tolerance: string;
  readonly start: number;
  readonly end: number;
}

const NUMBER = "(\\d{1,3}(?:[.,]\\d{1,3})?)";
const START = "(?<![\\p{L}\\d.,])";
/** `+80/-20 %`, `-20...+80%`, `+80 -20 %`, and the print `+80-20%`. */
const BETWEEN = " ?(?:[/,;…]|\\.{2,3})? ?";
const UNEQUAL = new RegExp(`${START}([+-]) ?${NUMBER} ?%?${BETWEEN}([+-]) ?${NUMBER} ?%`, "u");
const PERCENT = new RegExp(`(?:(?:±|\\+/?-) ?|${START})${NUMBER} ?%`, "u");
const PICOFARAD = new RegExp(`(?:±|\\+/?-) ?${NUMBER} ?p[fF]?(?![\\p{L}\\d])`, "u");

/** The first tolerance in a text that has U+2212 folded to a hyphen. */
export function findTolerance(text: string): FoundTolerance | undefined {
  if (!/[%±+]/.test(text)) return undefined;
  const unequal = UNEQUAL.exec(text);
  if (unequal && unequal[1] !== unequal[3]) {
    const [, sign, first, , second] = unequal;
    const [plus, minus] = sign === "+" ? [first, second] : [second, first];
    return found(unequal, `+${point(plus!)}/-${point(minus!)} %`);
  }
  const percent = PERCENT.exec(text);
  if (percent) return found(percent, `${point(percent[1]!)} %`);
  const absolute = PICOFARAD.exec(text);
  return absolute ? found(absolute, `${point(absolute[1]!)} pF`) : undefined;
}

/**
 * What a tolerance letter behind a value means, after IEC 60062:2016 table 3; on small capacitors
 * it means picofarad. Gives undefined for letters that are none.
 */
export function toleranceOfLetter(letter: string, farads?: number): string | undefined {
  const small = SMALL_CAPACITOR[letter];
  if (small && farads !== undefined && farads < small.below) return small.tolerance;
  return PERCENT_LETTERS[letter];
}

/**
 * Limits of a part's value from a tolerance as this module writes it: `1 %`, `+80/-20 %`, `0.25 pF`.
 * Undefined for other texts.
 */
export function toleranceLimits(
  tolerance: string,
  amount: number,
): { readonly min: number; readonly max: number } | undefined {
  const match = WRITTEN.exec(tolerance);
  if (!match) return undefined;
  const [, plus, minus, both, unit] = match;
  const share = unit === "%" ? Math.abs(amount) / 100 : 1e-12;
  return {
    min: amount - Number(minus ?? both) * share,
    max: amount + Number(plus ?? both) * share,
  };
}

const WRITTEN = /^(?:\+([\d.]{1,7})\/-([\d.]{1,7})|([\d.]{1,7})) (%|pF)$/;

const PERCENT_LETTERS: { readonly [letter: string]: string } = {
  B: "0.1 %",
  C: "0.25 %",
  D: "0.5 %",
  F: "1 %",
  G: "2 %",
  J: "5 %",
  K: "10 %",
  M: "20 %",
  N: "30 %",
  Z: "+80/-20 %",
};

/**
 * B, C and D as capacitor makers use them: a ceramic or mica capacitor below 1 nF is not made to
 * 0.5 % or closer, so the letter cannot mean per cent there. F and G from memory of EIA practice.
 */
const SMALL_CAPACITOR: { readonly [letter: string]: { tolerance: string; below: number } } = {
  B: { tolerance: "0.1 pF", below: 1e-9 },
  C: { tolerance: "0.25 pF", below: 1e-9 },
  D: { tolerance: "0.5 pF", below: 1e-9 },
  F: { tolerance: "1 pF", below: 10e-12 },
  G: { tolerance: "2 pF", below: 10e-12 },
};

function found(match: RegExpExecArray, tolerance: string): FoundTolerance {
  return { tolerance, start: match.index, end: match.index + match[0].length };
}

function point(number: string): string {
  return number.replace(",", ".");
}
