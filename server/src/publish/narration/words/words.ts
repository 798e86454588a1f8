/** The words of a narration in the guide's language; English where that is not known. */
import type { Language } from "../../../text/language.ts";
import { GERMAN } from "./de.ts";
import { ENGLISH } from "./en.ts";
import { SPANISH } from "./es.ts";
import type { NarrationWords } from "./form.ts";
import { FRENCH } from "./fr.ts";
import { DUTCH } from "./nl.ts";

const WORDS: Readonly<Record<Language, NarrationWords>> = {
  en: ENGLISH,
  de: GERMAN,
  fr: FRENCH,
  nl: DUTCH,
  es: SPANISH,
};

export function narrationWords(language: Language | undefined): NarrationWords {
  return WORDS[language ?? "en"];
}
