/** Word lists made ready for finding, one for each language. */
import { LANGUAGES, type Language } from "./language.ts";
import { StemList } from "./stems.ts";

export function stemLists(
  words: Readonly<Record<Language, readonly string[]>>,
): Readonly<Record<Language, StemList<true>>> {
  const listOf = (language: Language) =>
    new StemList(words[language].map((pattern) => [pattern, true] as const));
  return Object.fromEntries(LANGUAGES.map((one) => [one, listOf(one)])) as Record<
    Language,
    StemList<true>
  >;
}
