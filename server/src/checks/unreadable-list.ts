/** A parts list, or a part of it, that cannot be read. */
import type { Check } from "./check.ts";
import { problemsOf } from "./listProblems.ts";

export const check: Check = {
  meta: {
    code: "unreadable-list",
    summary: "The parts list, or a part of it, cannot be read.",
    severity: "error",
    source: "RFC 4180, and how people write parts lists",
    tags: ["list"],
  },
  list(list) {
    // A file that is no text cannot show a finding; the guide tells of it where it names the list.
    return list.text === "" ? [] : problemsOf(list, "unreadable-list");
  },
};
