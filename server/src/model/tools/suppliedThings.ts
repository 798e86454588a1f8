/** The tools and consumables that a kit brings along, by the lines of its list. */
import type { Language } from "../../text/language.ts";
import type { Thing } from "../../trade/tools/tool.ts";
import type { PartsList } from "../list/partsList.ts";
import { thingsIn } from "./namedThings.ts";

const suppliedBy = new WeakMap<PartsList, Map<Language, ReadonlySet<Thing>>>();
const NAMING = ["value", "part number", "description", "notes"] as const;

/** Kept for each list and language, since a list never changes. */
export function suppliedThings(list: PartsList, language: Language): ReadonlySet<Thing> {
  const byLanguage = suppliedBy.get(list) ?? new Map<Language, ReadonlySet<Thing>>();
  suppliedBy.set(list, byLanguage);
  const known = byLanguage.get(language);
  if (known) return known;
  const supplied = new Set<Thing>();
  for (const { cells } of list.lines) {
    for (const meaning of NAMING) {
      const text = cells[meaning]?.text;
      if (text) for (const thing of thingsIn(text, language)) supplied.add(thing);
    }
  }
  byLanguage.set(language, supplied);
  return supplied;
}
