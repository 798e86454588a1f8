/** The words with which a step begins, for lists in which the author looks for it. */
import type { Step } from "../model/guide.ts";
import { stepText } from "./stepText.ts";

/** Longer beginnings are cut at a word. */
const LONGEST = 60;

/** Made once: a step whose text changes is another step. */
const KNOWN = new WeakMap<Step, string>();

export function openingWords(step: Step): string {
  let words = KNOWN.get(step);
  if (words === undefined) {
    words = cut(stepText(step));
    KNOWN.set(step, words);
  }
  return words;
}

function cut(text: string): string {
  if (text.length <= LONGEST) return text;
  const end = text.lastIndexOf(" ", LONGEST);
  return `${text.slice(0, end > 0 ? end : LONGEST)} …`;
}
