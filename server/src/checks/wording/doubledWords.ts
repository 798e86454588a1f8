/** Words that may rightly stand twice in a row, by language. */
import type { Language } from "../../text/language.ts";

const list = (words: string): ReadonlySet<string> => new Set(words.split(" "));

/** Grammar doubles them: "that that", „die die“, « nous nous ». */
export const DOUBLED: Readonly<Record<Language, ReadonlySet<string>>> = {
  en: list("that had is do so no very bye"),
  de: list("die der das den dem des sie ihr sich so sehr was wer"),
  fr: list("nous vous faire si très"),
  nl: list("die dat haar zij ze er heel zo"),
  es: list("se no muy así que"),
};
