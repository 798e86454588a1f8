/** Changes to steps, marks and figures at the selection. */
import type { Action } from "../../features/actions/action.ts";
import { actionsAt } from "../../features/actions/all.ts";
import type { GuideState } from "../../model/guideState.ts";
import { toWorkspaceEdit } from "../convert.ts";
import { canBeOrdered, orderStage, stageIndexAt } from "../stageOrder.ts";
import { goingOn } from "./goingOn.ts";
import type { Offer, Offered, Requested } from "./offer.ts";

export function changes(kind: Action["kind"]): Offer {
  return function* (requested): Iterable<Offered> {
    const { context, uri, span } = requested;
    const { service } = context;
    const guide = service.guidesOf(uri).find(({ pages }) => pages.some((one) => one.uri === uri));
    if (!guide) return;
    for (const action of actionsAt(guide, { uri, ...span })) {
      const edit = action.kind === kind ? toWorkspaceEdit(action, service) : undefined;
      if (edit) yield { title: action.title, edit, ...goingOn(action, requested) };
    }
    if (kind === "rewrite") yield* order(guide, requested);
  };
}

/** Offered where a step of the stage can be moved to its place. */
function* order(guide: GuideState, { context, uri, span }: Requested): Iterable<Offered> {
  const { service } = context;
  const index = stageIndexAt(guide, uri, span.start);
  const stage = guide.stages[index];
  if (!stage || !canBeOrdered(service, guide, uri, index)) return;
  yield {
    title: `Put stage ${stage.number} in height order`,
    edit: async () => {
      const edit = await orderStage(service, guide, uri, index);
      return edit && toWorkspaceEdit({ edits: [{ uri, edits: [edit] }] }, service);
    },
  };
}
