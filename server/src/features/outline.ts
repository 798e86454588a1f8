/** The outline of a page: stages, their steps, and hazard notes. */
import type { GuideState } from "../model/guideState.ts";
import type { Span } from "../text/span.ts";
import { openingWords } from "./openingWords.ts";
import { type Section, type SectionOf, sectionsOf } from "./sections.ts";

export interface OutlineEntry {
  readonly kind: SectionOf["kind"];
  readonly name: string;
  /** `12 steps`; the hazard's gravity. */
  readonly detail: string;
  readonly span: Span;
  /** What the editor goes to. */
  readonly opening: Span;
  readonly inner: readonly OutlineEntry[];
}

export function outlineOf(guide: GuideState, uri: string): readonly OutlineEntry[] {
  return sectionsOf(guide, uri).map(entryOf);
}

function entryOf(section: Section): OutlineEntry {
  const { of, span, opening } = section;
  const { kind } = of;
  const inner = section.inner.map(entryOf);
  switch (of.kind) {
    case "stage": {
      const { stage, title } = of;
      const name = stage ? `${stage.number} ${title}` : title;
      const count = stage?.steps.length ?? 0;
      const detail = count === 0 ? "" : count === 1 ? "1 step" : `${count} steps`;
      return { kind, name: name.trim() || "–", detail, span, opening, inner };
    }
    case "step": {
      const { step } = of;
      const name = `${step.number} ${openingWords(step)}`;
      return { kind, name, detail: "", span, opening: within(opening, span), inner };
    }
    case "note": {
      const { signal, hazard } = of.note;
      const name = hazard === "" ? signal : `${signal}: ${hazard}`;
      return { kind, name, detail: "", span, opening, inner };
    }
  }
}

/** The step's block may hold lines that are cut off its section, such as the comment behind it. */
function within(opening: Span, span: Span): Span {
  return { start: opening.start, end: Math.min(opening.end, span.end) };
}
