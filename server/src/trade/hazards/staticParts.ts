/**
 * Which parts a static discharge destroys: MOS parts, junction FETs and integrated circuits; not
 * bipolar transistors, resistors and film capacitors (common practice). Three-terminal regulators
 * and their like are bipolar and sturdy, and are left out, too.
 */
import { type PartHints, partClass } from "../partClass.ts";

const FET_WORDS =
  /\b[jn]?-?(?:mos)?-?fets?\b|mosfet|cmos|\bmos\b|igbt|feldeffekt|effet de champ|efecto de campo|veldeffect/i;
const FET_TYPES =
  /\b(?:IRF|IRL|IRLZ|BUZ|BSS|BS1[07]|2N700[02]|VN10|FQP|STP\d+N|J1\d\d|J20\d|J3\d\d|BF24\d|BF25\d|2N38\d\d|2N54\d\d|MPF102|2SK\d)/i;
const STURDY =
  /^(?:[A-Z]{0,4}7[89][LMS]?\d\d|LM ?(?:1117|317|337|338|350)|AMS1117|TL43[12]|LM ?(?:334|335|336|385))/i;
const STURDY_WORDS =
  /voltage regulator|\bregulator\b|spannungsregler|régulateur|spanningsregelaar|regulador/i;

/** Whether a part with these letters and words needs care against static. */
export function isStaticSensitive(letters: string, hints: PartHints): boolean {
  const words = [hints.value, hints.description].filter(Boolean).join(" ");
  switch (partClass(letters, hints)) {
    case "transistor":
      return FET_WORDS.test(words) || FET_TYPES.test(words);
    case "ic":
      return !STURDY.test(hints.value ?? "") && !STURDY_WORDS.test(words);
    default:
      return false;
  }
}
