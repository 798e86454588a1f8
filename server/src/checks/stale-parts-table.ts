/** A parts table that Kitquill keeps does not say what its stage fits. */
import type { Guide, Stage } from "../model/guide.ts";
import { ByStage } from "./byStage.ts";
import { type Check, type Finding, type Fix, NO_FINDINGS } from "./check.ts";
import { type TablePlace, tablesOf } from "./partsTable/places.ts";
import { partsTable } from "./partsTable/rows.ts";
import { saysTable, writeTable } from "./partsTable/text.ts";
import { listsAreRead, replace, textAt } from "./places.ts";

export const check: Check = {
  meta: {
    code: "stale-parts-table",
    summary: "A parts table differs from what its stage fits.",
    severity: "warning",
    source: "common practice",
    tags: ["form"],
  },
  guide(guide) {
    return listsAreRead(guide) ? FINDINGS.in(guide) : NO_FINDINGS;
  },
};

const FINDINGS = new ByStage((stage, guide) => {
  const places = tablesOf(stage);
  return places.length > 0 ? judge(places, stage, guide) : NO_FINDINGS;
});

function judge(places: readonly TablePlace[], stage: Stage, guide: Guide): Finding[] {
  const table = partsTable(stage, guide);
  if (table.length === 1) return places.map(idle);
  return places.flatMap((place) => {
    if (!place.end) return [endless(place)];
    const inner = { start: place.open.end, end: place.end.start };
    return saysTable(textAt(place.piece, inner), table) ? [] : [stale(place, stage, guide)];
  });
}

function idle({ piece, open }: TablePlace): Finding {
  return {
    at: { piece, span: open },
    message: () =>
      "No step of this stage fits a part, so its parts table has nothing to say. Move it to the stage that it is for, or remove it.",
  };
}

function endless({ piece, open }: TablePlace): Finding {
  return {
    at: { piece, span: open },
    message: () =>
      "Nothing says where this parts table ends, so it is not kept current. Write `<!-- end -->` below it, before the next step.",
  };
}

function stale(place: TablePlace, stage: Stage, guide: Guide): Finding {
  return {
    at: { piece: place.piece, span: place.open },
    message: () =>
      "This parts table does not say what the steps of its stage fit, so builders would lay out the wrong parts. Have it written anew.",
    fixes: [() => rewrite(place, stage, guide)],
  };
}

function rewrite({ piece, open, end }: TablePlace, stage: Stage, guide: Guide): Fix {
  const span = { start: open.end, end: end!.start };
  const lineEnd = /\r\n|\n|\r/.exec(textAt(piece, span))?.[0] ?? "\n";
  const table = writeTable(partsTable(stage, guide), lineEnd);
  return replace(
    piece,
    span,
    `${lineEnd}${lineEnd}${table}${lineEnd}`,
    "Write the parts table anew",
    true,
  );
}
