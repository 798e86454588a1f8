/** A line of the parts list states another number of pieces than it has designators. */
import type { Guide } from "../model/guide.ts";
import type { ListLine, ListProblem, PartsList } from "../model/list/partsList.ts";
import type { Check } from "./check.ts";
import { asFinding, problemsOf } from "./listProblems.ts";

export const check: Check = {
  meta: {
    code: "count-mismatch",
    summary: "A line of the parts list has more or fewer designators than its quantity says.",
    severity: "warning",
    source: "common practice",
    tags: ["list"],
  },
  *line(line, list, guide) {
    if (hasSparesForMatching(line, guide)) return;
    for (const problem of problemsByLine(list).get(line.index) ?? []) {
      yield asFinding(list, problem);
    }
  },
  list(list) {
    return problemsOf(list, "count-mismatch", ({ line }) => line === undefined);
  },
};

/** Whoever picks a matched set needs more pieces than are fitted. */
function hasSparesForMatching(line: ListLine, guide: Guide): boolean {
  if (line.quantity === undefined || line.quantity < line.designators.length) return false;
  return guide.partsOf(line).some((part) => guide.uses(part).some(({ role }) => role === "match"));
}

const byLine = new WeakMap<PartsList, ReadonlyMap<number, readonly ListProblem[]>>();

/** The list's count problems, looked up once for a list and not once for each of its lines. */
function problemsByLine(list: PartsList): ReadonlyMap<number, readonly ListProblem[]> {
  const known = byLine.get(list);
  if (known) return known;
  const found = new Map<number, ListProblem[]>();
  for (const problem of list.problems) {
    if (problem.code !== "count-mismatch" || problem.line === undefined) continue;
    found.set(problem.line, [...(found.get(problem.line) ?? []), problem]);
  }
  byLine.set(list, found);
  return found;
}
