/** Tools and consumables that steps name and nothing lists. */
import type { Guide } from "../../model/guide.ts";
import { type Naming, thingsIn } from "../../model/tools/namedThings.ts";
import { suppliedThings } from "../../model/tools/suppliedThings.ts";
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
