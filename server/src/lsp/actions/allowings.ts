/** Comments that allow the findings at the selection; the author writes the reason. */
import { allowHere } from "../../features/actions/allow.ts";
import { toDiagnostic, toWorkspaceEdit } from "../convert.ts";
import { findingsAt } from "./fixes.ts";
import { goingOn } from "./goingOn.ts";
import type { Offer, Offered } from "./offer.ts";

/** Findings of comments themselves, and the line that stands for those not shown. */
const NOT_ALLOWED = /^(?:allow-|more-findings$)/;

export const allowings: Offer = function* (requested): Iterable<Offered> {
  const { context, uri } = requested;
  const { service } = context;
  const guide = service.guidesOf(uri).find(({ pages }) => pages.some((page) => page.uri === uri));
  if (!guide) return;
  const told = new Set<string>();
  for (const diagnosis of findingsAt(requested)) {
    const { code, span } = diagnosis;
    if (NOT_ALLOWED.test(code)) continue;
    const action = allowHere(guide, uri, span.start, code);
    const edit = action && toWorkspaceEdit(action, service);
    if (!action || !edit || told.has(action.title)) continue;
    told.add(action.title);
    yield {
      title: action.title,
      diagnostics: [toDiagnostic(diagnosis, context.explain)],
      edit,
      ...goingOn(action, requested),
    };
  }
};
