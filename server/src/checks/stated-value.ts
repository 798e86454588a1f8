/** A value stated in a mark, `[R1–R4 = 4k7]`, or in a table of the guide differs from the list's. */
import type { ResolvedMark } from "../model/guide.ts";
import type { Part } from "../model/parts.ts";
import type { Check } from "./check.ts";
import { replace } from "./places.ts";
import { differs } from "./values/agree.ts";
import { groupByLine, listedByAll, told, toldAt } from "./values/listed.ts";
import { tableFindings } from "./values/tables.ts";

export const check: Check = {
  meta: {
    code: "stated-value",
    summary: "A value stated in a mark or a table differs from the list.",
    severity: "warning",
    source: "IEC 60062 for value codes; common practice for type numbers",
    tags: ["parts"],
  },
  *mark(resolved) {
    const { stated } = resolved.mark;
    if (!stated) return;
    const parts = partsOf(resolved);
    const wrong = groupByLine(parts).filter(([part]) => differs(part!, stated.text));
    if (wrong.length === 0) return;
    yield {
      at: { piece: resolved.piece, span: stated.span },
      message: () =>
        `This step says ${stated.text}, but the parts list says ${told(wrong)}. The builder believes one of the two: correct the wrong one.`,
      related: toldAt(wrong),
      fixes: listedByAll(parts).map(
        (value) => () =>
          replace(resolved.piece, stated.span, value, `Write ${value}, as in the list`),
      ),
    };
  },
  piece: tableFindings,
};

function partsOf(resolved: ResolvedMark): Part[] {
  const parts = new Set<Part>();
  for (const item of resolved.items) {
    for (const supply of item.supplies) if (supply.kind === "part") parts.add(supply);
  }
  return [...parts];
}
