/** The words of a published page in the guide's language; English where that is not known. */
import type { Language } from "../../text/language.ts";
import { GERMAN } from "./de.ts";
import { ENGLISH } from "./en.ts";
import { SPANISH } from "./es.ts";
import type { PageWords } from "./form.ts";
import { FRENCH } from "./fr.ts";
import { DUTCH } from "./nl.ts";

const WORDS: Readonly<Record<Language, PageWords>> = {
  en: ENGLISH,
  de: GERMAN,
  fr: FRENCH,
  nl: DUTCH,
  es: SPANISH,
};

export function pageWords(language: Language | undefined): PageWords {
  return WORDS[language ?? "en"];
}

/** Puts the values in for the signs `#`, in order. */
export function filled(text: string, ...values: readonly (string | number)[]): string {
  let next = 0;
  return text.replace(/#/g, () => String(values[next++] ?? ""));
}

/** `1 step`, `6 steps`. */
export function counted([one, several]: readonly [string, string], count: number): string {
  return filled(count === 1 ? one : several, count);
}
