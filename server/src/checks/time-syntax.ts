/** A comment tells how long a step takes, in a form that cannot be read. */
import { mendedTime } from "../syntax/workTime.ts";
import type { Check } from "./check.ts";
import { replace } from "./places.ts";

export const check: Check = {
  meta: {
    code: "time-syntax",
    summary: "A comment says how long a step takes in a form that cannot be read.",
    severity: "warning",
    source: "symbols of units: NIST SP 811 (2008), table 6",
    tags: ["form"],
  },
  *piece(piece) {
    for (const fact of piece.facts.facts) {
      if (fact.kind !== "comment" || fact.comment.kind !== "takes") continue;
      const { seconds, time, timeSpan } = fact.comment;
      if (seconds !== undefined) continue;
      const mended = mendedTime(time);
      yield {
        at: { piece, span: timeSpan },
        message: () =>
          `"${time}" is no time that can be read, so the script of the video guesses how long this takes. Write hours, minutes and seconds as ${mended ? `\`${mended}\`` : "`1 h 30 min`, `5 min` or `90 s`"}.`,
        fixes: mended ? [() => replace(piece, timeSpan, mended, `Write ${mended}`, true)] : [],
      };
    }
  },
};
