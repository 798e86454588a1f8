/** Tools and consumables that steps name and nothing lists. */
import type { Guide } from "../../model/guide.ts";
import type { PartsList } from "../../model/list/partsList.ts";
import { type Naming, thingsIn } from "../../model/tools/namedThings.ts";
import type { FrontMatter } from "../../syntax/frontMatter.ts";
import type { Language } from "../../text/language.ts";
import type { Thing } from "../../trade/tools/tool.ts";

/** A thing that no list has, where a step first names it. */
export interface Unlisted {
  readonly thing: Thing;
  readonly first: Naming;
}

/** What the front matter, the marks and the kit's own parts lists leave out. */
export function* unlisted(guide: Guide): Generator<Unlisted, void, void> {
  const { language, things } = guide;
  if (!language) return;
  const listed = listedTools(guide.frontMatter, language);
  for (const thing of things.named()) {
    if (listed.has(thing) || things.isMarked(thing)) continue;
    if (guide.lists.some((list) => suppliedThings(list, language).has(thing))) continue;
    const first = things.first(thing);
    if (first) yield { thing, first };
  }
}

const listedBy = new WeakMap<FrontMatter, ReadonlySet<Thing>>();

function listedTools(frontMatter: FrontMatter, language: Language): ReadonlySet<Thing> {
  const known = listedBy.get(frontMatter);
  if (known) return known;
  const listed = new Set(frontMatter.tools.flatMap(({ value }) => thingsIn(value, language)));
  listedBy.set(frontMatter, listed);
  return listed;
}

const suppliedBy = new WeakMap<PartsList, Map<Language, ReadonlySet<Thing>>>();
const NAMING = ["value", "part number", "description", "notes"] as const;

/** Things that a kit brings along, by the lines of its list. */
function suppliedThings(list: PartsList, language: Language): ReadonlySet<Thing> {
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
