/** A cross reference to a label that no step has, or a label that two places have. */
import type { Guide, GuidePiece, Step } from "../model/guide.ts";
import { nearestWord } from "../text/nearest.ts";
import type { Span } from "../text/span.ts";
import type { Check, Finding } from "./check.ts";
import { replace } from "./places.ts";

interface Place {
  readonly piece: GuidePiece;
  readonly span: Span;
  readonly step: Step | undefined;
}

export const check: Check = {
  meta: {
    code: "step-label",
    summary: "A step label is unknown, or given twice.",
    severity: "error",
    source: "common practice",
    tags: ["form"],
  },
  *guide(guide) {
    for (const { name, piece, span } of guide.references()) {
      if (guide.labels(name).length === 0) yield unknownLabel(name, piece, span, guide);
    }
    for (const name of guide.labelNames()) {
      const [first, ...others] = guide.labels(name);
      for (const other of others) yield doubledLabel(name, first!, other);
    }
  },
};

function unknownLabel(name: string, piece: GuidePiece, span: Span, guide: Guide): Finding {
  const meant = nearestWord(name, guide.labelNames());
  return {
    at: { piece, span },
    message: () =>
      `No step carries the label "${name}", so the published page has no number to show here. ` +
      (meant ? `Did you mean "${meant}"?` : `Write \`[#${name}]\` into the step that is meant.`),
    fixes: meant ? [() => replace(piece, span, meant, `Write ${meant}`)] : [],
  };
}

function doubledLabel(name: string, first: Place, second: Place): Finding {
  return {
    at: { piece: second.piece, span: second.span },
    message: () =>
      `The label "${name}" is given ${where(first)} already, so a reference to it may mean either. Give one of them another name.`,
    related: [
      {
        at: { piece: first.piece, span: first.span },
        message: () => `"${name}" is given here first.`,
      },
    ],
  };
}

function where({ step }: Place): string {
  return step ? `in step ${step.number}` : "at another place";
}
