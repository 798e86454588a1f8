/** What is found of a line of the list, once for all the parts on it: parts are many, lines are few. */
import type { ListLine } from "./list/partsList.ts";

/** Gives what `find` gives, which must depend on nothing but the line. */
export function onceALine<Found>(find: (line: ListLine) => Found): (line: ListLine) => Found {
  const known = new WeakMap<ListLine, { readonly found: Found }>();
  return (line) => {
    const before = known.get(line);
    if (before) return before.found;
    const found = find(line);
    known.set(line, { found });
    return found;
  };
}
