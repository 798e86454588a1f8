/** The words with which a step begins, for lists in which the author looks for it. */
import type { Step } from "../model/guide.ts";
import { stepText } from "./stepText.ts";

/** Longer beginnings are cut at a word. */
const LONGEST = 60;

export function openingWords(step: Step): string {
  const text = stepText(step);
  if (text.length <= LONGEST) return text;
  const cut = text.lastIndexOf(" ", LONGEST);
  return `${text.slice(0, cut > 0 ? cut : LONGEST)} …`;
}
