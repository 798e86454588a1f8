/** Turns what the reader of a parts list reported into findings. */
import type { ListProblem, ListProblemCode, PartsList } from "../model/list/partsList.ts";
import type { Finding } from "./check.ts";

/** Findings for the list's problems of one code, at their places in the list. */
export function* problemsOf(
  list: PartsList,
  code: ListProblemCode,
  wanted: (problem: ListProblem) => boolean = () => true,
): Iterable<Finding> {
  for (const problem of list.problems) {
    if (problem.code === code && wanted(problem)) yield asFinding(list, problem);
  }
}

export function asFinding(list: PartsList, { span, message, other }: ListProblem): Finding {
  const { uri } = list;
  return {
    at: { uri, span },
    message: () => message,
    related: other ? [{ at: { uri, span: other }, message: () => "It is listed here first." }] : [],
  };
}
