/** Puts a table of what a stage fits below its heading, which the check of such tables keeps current. */
import { tablesOf } from "../../checks/partsTable/places.ts";
import { partsTable } from "../../checks/partsTable/rows.ts";
import { writeTable } from "../../checks/partsTable/text.ts";
import type { GuideState } from "../../model/guideState.ts";
import type { Action, Selection } from "./action.ts";

/** Offered on the heading of a stage that fits something and has no such table. */
export function* insertPartsTable(guide: GuideState, { uri, start }: Selection): Iterable<Action> {
  const stage = guide.stages.find(({ heading }) => {
    if (heading?.piece.page.uri !== uri) return false;
    const at = start - heading.piece.start;
    return heading.fact.span.start <= at && at <= heading.fact.span.end;
  });
  if (!stage?.heading || tablesOf(stage).length > 0) return;
  const table = partsTable(stage, guide);
  if (table.length < 2) return;
  const { piece, fact } = stage.heading;
  const end = /\r\n|\n|\r/.exec(piece.page.text.slice(0, 2000))?.[0] ?? "\n";
  const at = piece.start + fact.span.end;
  const lines = ["", "", "<!-- parts table -->", "", `${writeTable(table, end)}`, "<!-- end -->"];
  yield {
    title: `Insert the parts table of stage ${stage.number}`,
    kind: "rewrite",
    edits: [{ uri, edits: [{ span: { start: at, end: at }, text: lines.join(end) }] }],
  };
}
