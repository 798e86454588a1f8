/** What the author sees on pointing at `see: label`: the step that it leads to. */
import type { GuideState } from "../model/guideState.ts";
import { escapeMarkdown } from "./escape.ts";
import type { Hover } from "./hover.ts";
import { stepText } from "./stepText.ts";
import { referenceAt } from "./subject.ts";

export function hoverOfReference(
  guide: GuideState,
  uri: string,
  offset: number,
): Hover | undefined {
  const reference = referenceAt(guide, uri, offset);
  const step = reference && guide.labels(reference.name)[0]?.step;
  if (!reference || !step) return undefined;
  const markdown = `**Step ${step.number}**\n\n${escapeMarkdown(stepText(step))}`;
  return { span: reference.span, markdown };
}
