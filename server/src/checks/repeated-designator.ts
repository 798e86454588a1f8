/** A designator that stands on two lines of a list, or in two lists of one board. */
import type { Guide } from "../model/guide.ts";
import type { ListLine, PartsList } from "../model/list/partsList.ts";
import type { Part } from "../model/parts.ts";
import type { Check, Finding } from "./check.ts";
import { problemsOf } from "./listProblems.ts";
import { listedAt } from "./places.ts";
import { listNames, partName } from "./words.ts";

export const check: Check = {
  meta: {
    code: "repeated-designator",
    summary: "A designator is on two lines of the parts list.",
    severity: "warning",
    source: "ASME Y14.44-2008, 2.1.3",
    tags: ["list"],
  },
  *list(list, guide) {
    yield* problemsOf(list, "repeated-designator");
    if (guide.lists.length < 2) return;
    // The board that the guide names the list for.
    const board = guide.parts.find((part) => part.list === list && !part.line.board)?.board;
    for (const line of list.lines) {
      const elsewhere = listedElsewhere(line, list, line.board ?? board, guide);
      if (elsewhere.length > 0) yield clash(elsewhere, line, list);
    }
  },
};

/** Parts that this line claims too, and that an earlier list of the same board has given away. */
function listedElsewhere(
  line: ListLine,
  list: PartsList,
  board: string | undefined,
  guide: Guide,
): Part[] {
  const own = guide.partsOf(line);
  if (own.length === line.designators.length || !line.fitted) return [];
  const names = new Set(own.map((part) => part.name));
  return line.designators.flatMap(({ name }) => {
    if (names.has(name)) return [];
    const part = guide.find(name, board);
    const isShared = !part || part.list === list || part.socketLine || !part.fitted;
    return isShared ? [] : [part];
  });
}

function clash(parts: readonly Part[], line: ListLine, list: PartsList): Finding {
  const first = parts[0]!;
  const span = line.designators.find(({ name }) => name === first.name)?.span ?? line.span;
  const file = first.list.uri.slice(first.list.uri.lastIndexOf("/") + 1);
  return {
    at: { uri: list.uri, span },
    message: () =>
      `${listNames(parts)} ${parts.length > 1 ? "are" : "is"} listed in ${decodeURIComponent(file)} already, and this line is not counted. If the lists are of different boards, name these in the guide: \`parts: { main: …, relay: … }\`.`,
    related: [{ at: listedAt(first), message: () => `${partName(first)} is listed here first.` }],
  };
}
