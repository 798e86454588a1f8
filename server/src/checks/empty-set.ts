/** A set such as `all R` that takes in no part at all. */
import type { SetItem } from "../syntax/dialect.ts";
import type { Check } from "./check.ts";
import { listsAreRead } from "./places.ts";

export const check: Check = {
  meta: {
    code: "empty-set",
    summary: "A set matches no part of the list.",
    severity: "warning",
    source: "common practice",
    tags: ["parts"],
  },
  *mark(resolved, guide) {
    if (!listsAreRead(guide)) return;
    for (const { item, supplies } of resolved.items) {
      if (item.kind !== "set" || supplies.length > 0) continue;
      yield {
        at: { piece: resolved.piece, span: item.span },
        message: () => (item.which === "rest" ? nothingLeft(item) : nothingSuch(item)),
      };
    }
  },
};

function nothingLeft(set: SetItem): string {
  return `Nothing is left for "rest of ${set.of}": the list has no such part that earlier steps have not fitted. Take this mark out, or check the steps before it.`;
}

function nothingSuch(set: SetItem): string {
  const except = set.except.length > 0 ? " beside those excepted" : "";
  return `The parts list has no part with the letters or the value "${set.of}"${except}, so this step fits nothing. Correct the set.`;
}
