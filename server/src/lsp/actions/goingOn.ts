/** After an action the author goes on writing where its text says. */
import type { CodeAction, Location } from "vscode-languageserver";
import type { Action } from "../../features/actions/action.ts";
import { placeAfter } from "../../text/placeAfter.ts";
import { toPosition } from "../convert.ts";
import type { Requested } from "./offer.ts";

/** The command that leads there, for a client that has one; the page must be the one that was asked about. */
export function goingOn(
  { title, edits, goOn }: Action,
  { context, uri, lines }: Requested,
): Pick<CodeAction, "command"> {
  const own = edits.find((one) => one.uri === uri);
  if (!context.goTo || goOn?.uri !== uri || !own) return {};
  const at = toPosition(placeAfter(goOn.offset, own.edits, lines));
  const location: Location = { uri, range: { start: at, end: at } };
  return { command: { title, command: context.goTo, arguments: [location] } };
}
