/** The kit's name: as the front matter has it, else the first heading of level 1. */
import type { GuideState } from "../model/guideState.ts";
import { escapeHtml } from "./html.ts";

export function titleOf(guide: GuideState): string | undefined {
  const { title } = guide.frontMatter;
  if (title) return title.value;
  for (const { facts } of guide.pieces) {
    for (const fact of facts.facts) {
      if (fact.kind === "heading") return fact.level === 1 ? fact.title : undefined;
    }
  }
  return undefined;
}

/** How the title element of a page about the guide ends; undefined for a guide without a title. */
export function endOfTitle(guide: GuideState): string | undefined {
  const title = titleOf(guide);
  return title && `${escapeHtml(title)}</title>`;
}
