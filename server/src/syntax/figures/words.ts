/** The signs and the lexical shape of figures; their sums are done elsewhere. */

import { ARITHMETIC } from "../../quantity/functions.ts";

/** Longest figure that is read, in characters. */
export const MAX_FIGURE = 500;

/** No names that a figure could define. */
export const FUNCTIONS: ReadonlySet<string> = new Set(ARITHMETIC.keys());

/** `VCC`, `P(R50)`, `torque(Q1, Q2)`. */
export const NAME = /^\p{L}[\p{L}\p{Nd}_₀-₉]*(?:\s*\(\s*[^()=±;<>]*\))?$/u;

export const TOLERANCE_SIGN = /±|\+\s?\/?\s?[-−](?=\s*\d)/u;

const TOKEN =
  /\s*(?:(\d{1,3}(?:[ \u00a0\u2007\u2009\u202f]\d{3})+(?!\d)(?:[.,]\d+)?|\d+(?:[.,]\d+)*(?:[eE][-+\u2212]?\d+)?(?![\d]))|([\p{L}_µμΩ\u2126°%‰][\p{L}\p{Nd}_₀-₉]*)|([-\u2212+*/^∥·⋅×÷;²³])|(\()|(\))|(,))/uy;
/** Units that are written as a product with a space: `0.5 N m`, `7 lbf in`. */
const FORCE = /^(?:[ckm]?N|kgf|gf|lbf|ozf|lb|oz)$/;
const LEVER = /^(?:m|cm|mm|in|ft)$/;

export type Shape = "expression" | "unbalanced" | "plain number" | "other";

/**
 * Whether a text looks like an expression of the dialect rather than prose or code in braces.
 * `plain number` has nothing but digits: `{1}` is left to whatever wrote it.
 */
export function shapeOf(text: string): Shape {
  let depth = 0;
  let lowest = 0;
  let last: "start" | "number" | "word" | "sign" = "start";
  let word = "";
  let afterNumber = false;
  let plain = true;
  TOKEN.lastIndex = 0;
  while (TOKEN.lastIndex < text.length) {
    const from = TOKEN.lastIndex;
    const match = TOKEN.exec(text);
    if (!match) return text.slice(from).trim() === "" ? end() : "other";
    const [whole, number, letters, sign, open, close, comma] = match;
    if (number !== undefined) {
      if (last === "number" || (last === "word" && word !== "AWG")) return "other";
      last = "number";
      continue;
    }
    plain = false;
    if (letters !== undefined) {
      const spaced = /^\s/.test(whole);
      if (last === "word" && !(afterNumber && FORCE.test(word) && LEVER.test(letters)))
        return "other";
      afterNumber = last === "number";
      if (afterNumber && spaced && letters.length > 8) return "other";
      word = letters;
      last = "word";
    } else if (open !== undefined) {
      depth++;
      last = "start";
    } else if (close !== undefined) {
      lowest = Math.min(lowest, --depth);
      last = "sign";
    } else if (comma !== undefined) {
      if (depth <= 0) return "other";
      last = "start";
    } else if (sign !== undefined) {
      last = "sign";
    }
  }
  return end();

  function end(): Shape {
    if (depth !== 0 || lowest < 0) return "unbalanced";
    return plain ? "plain number" : "expression";
  }
}
