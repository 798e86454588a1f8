/** A designator that stands on two lines of a parts list. */
import type { Guide } from "../model/guide.ts";
import type { ListProblem, PartsList } from "../model/list/partsList.ts";
import type { Part } from "../model/parts.ts";
import type { Check } from "./check.ts";
import { problemsOf } from "./listProblems.ts";

export const check: Check = {
  meta: {
    code: "repeated-designator",
    summary: "A designator stands on two lines of the parts list.",
    severity: "warning",
    source: "ASME Y14.44-2008, 2.1.3",
    tags: ["list"],
  },
  list(list, guide) {
    return problemsOf(list, "repeated-designator", (problem) => !isMeant(problem, list, guide));
  },
};

/**
 * Whether the two lines are a chip and its socket, or two variants of which only one is fitted, for
 * all designators that the problem is about.
 */
function isMeant({ line: index, span }: ListProblem, list: PartsList, guide: Guide): boolean {
  const line = index === undefined ? undefined : list.lines[index];
  if (!line) return false;
  const names = line.designators.filter((one) => one.span.start === span.start);
  return (
    names.length > 0 &&
    names.every(({ name }) => {
      const part = partOn(list, name, guide);
      return part && (part.socketLine || !line.fitted || part.line === line);
    })
  );
}

function partOn(list: PartsList, name: string, guide: Guide): Part | undefined {
  return [undefined, ...guide.boards]
    .map((board) => guide.find(name, board))
    .find((part) => part?.list === list);
}
