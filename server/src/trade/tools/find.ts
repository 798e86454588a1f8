/** Finds the tools and consumables that a text names, in the five languages. */
import type { Language } from "../../text/language.ts";
import { StemList } from "../../text/stems.ts";
import { de } from "./de.ts";
import { en } from "./en.ts";
import { es } from "./es.ts";
import { fr } from "./fr.ts";
import { nl } from "./nl.ts";
import type { Thing, ThingWords } from "./tool.ts";

function compile(words: ThingWords): StemList<Thing> {
  const entries = Object.entries(words) as [Thing, readonly string[]][];
  return new StemList(
    entries.flatMap(([thing, patterns]) =>
      patterns.map((pattern): [string, Thing] => [pattern, thing]),
    ),
  );
}

export const THING_WORDS: Readonly<Record<Language, StemList<Thing>>> = {
  en: compile(en),
  de: compile(de),
  fr: compile(fr),
  nl: compile(nl),
  es: compile(es),
};
