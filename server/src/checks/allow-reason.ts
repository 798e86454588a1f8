/** A comment allows findings of a check and does not say why. */
import type { Check } from "./check.ts";

export const check: Check = {
  meta: {
    code: "allow-reason",
    summary: "A comment allows a finding and gives no reason.",
    severity: "warning",
    source: "common practice",
    tags: ["form"],
  },
  *piece(piece) {
    for (const fact of piece.facts.facts) {
      if (fact.kind !== "comment" || fact.comment.kind !== "allow" || fact.comment.reason) continue;
      const { code } = fact.comment;
      yield {
        at: { piece, span: fact.span },
        message: () =>
          `This comment allows findings of ${code} and does not say why. Without a reason nobody can tell later whether it still holds. Write it after a colon: \`<!-- allow ${code}: the reason -->\`.`,
      };
    }
  },
};
