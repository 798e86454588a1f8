/** Languages of guides whose words the checker knows, by their two letters (ISO 639-1). */
export const LANGUAGES = ["en", "de", "fr", "nl", "es"] as const;
export type Language = (typeof LANGUAGES)[number];

/** The language that a tag such as `de-AT` (BCP 47) names; undefined for one not known here. */
export function languageOf(tag: string): Language | undefined {
  const primary = tag.toLowerCase().split(/[-_]/, 1)[0];
  return LANGUAGES.find((one) => one === primary);
}
