/** Numbers as the guide's language writes them. */
import type { Language } from "../text/language.ts";

/** With a decimal comma, as all our languages but English have it (common practice). */
export function localNumbers(text: string, language: Language | undefined): string {
  if (language === undefined || language === "en") return text;
  return text.replace(/(\d)\.(?=\d)/g, "$1,");
}
