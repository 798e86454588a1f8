/**
 * What stands in the head of printed pages: the guide's title in the margin, and below it, where a
 * stage goes on, its number and name. They repeat as the head of a table does: a page of its own for
 * each stage would leave many sheets half empty.
 */
import type { StageNode } from "../../model/stageNode.ts";

/** Rules of style for the title. */
export function titleInMargin(title: string): string {
  return `@media print {\n@page { @top-left { content: ${cssText(title)} } }\n}\n`;
}

/** Stands before a stage's heading; that covers it where the stage begins. `heading` is HTML. */
export function runningHead({ number }: StageNode, heading: string): string {
  return `<div class="running" aria-hidden="true"><p>${number} ${heading}</p></div>`;
}

/** A string of CSS inside a style element: nothing in it ends either of them. */
function cssText(text: string): string {
  const escaped = text.replace(/[\\"<>\n\r\f]/g, (sign) => `\\${sign.charCodeAt(0).toString(16)} `);
  return `"${escaped}"`;
}
