/** A reading is taken, and nothing says what to do when it is off. */
import type { Stage, Step } from "../model/guide.ts";
import type { TextBlock } from "../model/prose.ts";
import type { Language } from "../text/language.ts";
import type { Span } from "../text/span.ts";
import { actLexicon } from "../trade/acts/lexicon.ts";
import { ByStage } from "./byStage.ts";
import { type Check, type Finding, NO_FINDINGS } from "./check.ts";
import { textAt } from "./places.ts";

export const check: Check = {
  meta: {
    code: "reading-remedy",
    summary: "Nothing says what to do when a reading is off.",
    severity: "information",
    source: "IEC/IEEE 82079-1:2019",
    late: true,
    tags: ["safety"],
  },
  guide(guide) {
    return guide.language ? FINDINGS.in(guide) : NO_FINDINGS;
  },
};

const FINDINGS = new ByStage((stage, { language }) =>
  stage.hasReading ? [...unremedied(stage, language!)] : NO_FINDINGS,
);

/** A step that is no sub-step, with its sub-steps. */
type Group = readonly Step[];

function* unremedied(stage: Stage, language: Language): Iterable<Finding> {
  const groups = groupsOf(stage);
  for (const [index, group] of groups.entries()) {
    const reading = readingIn(group);
    if (!reading || hasRemedy(group, language)) continue;
    const next = groups[index + 1]?.[0];
    if (next && beginsWithRemedy(next, language)) continue;
    yield withoutRemedy(reading.step, reading.span);
  }
}

function groupsOf({ steps }: Stage): Group[] {
  const groups: Step[][] = [];
  for (const step of steps) {
    if (step.fact.depth === 0 || groups.length === 0) groups.push([]);
    groups.at(-1)!.push(step);
  }
  return groups;
}

function readingIn(group: Group): { step: Step; span: Span } | undefined {
  for (const step of group) {
    const span = ownFigures(step).find(({ reading }) => reading)?.span;
    if (span) return { step, span };
  }
  return undefined;
}

function ownFigures(step: Step) {
  const blocks = step.prose;
  return step.piece.facts.facts.flatMap((fact) =>
    fact.kind === "figure" && blocks.some((block) => isWithin(fact.figure.span, block.fact.span))
      ? [fact.figure]
      : [],
  );
}

function isWithin(inner: Span, outer: Span): boolean {
  return outer.start <= inner.start && inner.end <= outer.end;
}

/** Words of remedy, a reference or a link, or a table whose head speaks of it. */
function hasRemedy(group: Group, language: Language): boolean {
  const { remedies } = actLexicon(language);
  const speaks = (block: TextBlock) =>
    remedies.has(block.words) || /\]\(|\]\[/.test(textAt(block.piece, block.fact.span));
  return group.some(
    (step) =>
      step.prose.some(speaks) ||
      step.piece.marks.some(({ mark, step: own }) => own === step && mark.role === "see") ||
      tableHead(step).some(speaks),
  );
}

/** Cells of the head of the table whose row the step is. */
function tableHead({ piece, fact }: Step): readonly TextBlock[] {
  if (fact.source !== "block") return [];
  const head = piece.facts.facts.findLast(
    (one) => one.kind === "row" && one.header && one.span.start < fact.span.start,
  );
  if (head?.kind !== "row") return [];
  return piece.prose.filter((block) => isWithin(block.fact.span, head.span));
}

function beginsWithRemedy(step: Step, language: Language): boolean {
  const words = step.prose[0]?.words.slice(0, 2);
  return words !== undefined && actLexicon(language).remedies.has(words);
}

function withoutRemedy(step: Step, span: Span): Finding {
  return {
    at: { piece: step.piece, span },
    message: () =>
      `Step ${step.number} takes a reading, and nothing says what to do when it is off: the builder is left alone just when something is wrong. Add a sentence, a sub-step or a reference ("If it is lower, …").`,
  };
}
