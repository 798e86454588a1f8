/** All actions on the text at a selection of a page. */
import type { GuideState } from "../../model/guideState.ts";
import type { Action, Selection } from "./action.ts";
import { insertPartsTable } from "./insertPartsTable.ts";
import { moves } from "./moves.ts";
import { putAside } from "./putAside.ts";
import { splitStep } from "./splitStep.ts";
import { writeResult } from "./writeResult.ts";

export function* actionsAt(guide: GuideState, selection: Selection): Iterable<Action> {
  for (const offer of [writeResult, putAside, splitStep, insertPartsTable, moves])
    yield* offer(guide, selection);
}
