/** Comments that allow the findings at the selection; the author writes the reason. */
import type { Command, Location } from "vscode-languageserver";
import type { Action } from "../../features/actions/action.ts";
import { allowHere } from "../../features/actions/allow.ts";
import type { LineIndex } from "../../text/lines.ts";
import { toDiagnostic, toPosition, toWorkspaceEdit } from "../convert.ts";
import { findingsAt } from "./fixes.ts";
import type { Offer, Offered } from "./offer.ts";

/** Findings of comments themselves, and the line that stands for those not shown. */
const NOT_ALLOWED = /^(?:allow-|more-findings$)/;

export const allowings: Offer = function* (requested): Iterable<Offered> {
  const { context, uri, lines } = requested;
  const { service, goTo } = context;
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
    const command = goTo && goingOn(action, lines, goTo);
    yield {
      title: action.title,
      diagnostics: [toDiagnostic(diagnosis, context.explain)],
      edit,
      ...(command && { command }),
    };
  }
};

/** Leads to where the reason is written, in the text as it will be. */
function goingOn(
  { title, edits, goOn }: Action,
  lines: LineIndex,
  goTo: string,
): Command | undefined {
  const [inserted] = edits[0]!.edits;
  if (!goOn || !inserted) return undefined;
  const head = inserted.text.slice(0, goOn.offset - inserted.span.start).split(/\r\n|\n|\r/);
  const { line, column } = lines.positionAt(inserted.span.start);
  const last = head.at(-1)!.length;
  const at = toPosition({
    line: line + head.length - 1,
    column: head.length === 1 ? column + last : last,
  });
  const location: Location = { uri: goOn.uri, range: { start: at, end: at } };
  return { title, command: goTo, arguments: [location] };
}
