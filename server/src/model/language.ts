/** Languages of guides whose words the checker knows. */
import type { FrontMatter } from "../syntax/frontMatter.ts";

export const LANGUAGES = ["en", "de", "fr", "nl", "es"] as const;
export type Language = (typeof LANGUAGES)[number];

/** The guide's language: English unless `language` says otherwise; undefined for any other. */
export function languageOf({ language }: FrontMatter): Language | undefined {
  if (!language) return "en";
  const primary = language.value.toLowerCase().split(/[-_]/, 1)[0];
  return LANGUAGES.find((one) => one === primary);
}
