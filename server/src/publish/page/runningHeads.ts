/** Rules for paper: each stage has its name in the head of its pages. */
import type { Stage } from "../../model/guide.ts";

export function runningHeads(title: string, stages: readonly Stage[]): string {
  const rules = [`@page { @top-left { content: ${cssText(title)} } }`];
  for (const { number, heading, steps } of stages) {
    if (!heading || steps.length === 0) continue;
    const name = cssText(`${number}  ${heading.fact.title}`);
    rules.push(
      `.stage-${number} { page: stage-${number} }`,
      `@page stage-${number} { @top-right { content: ${name} } }`,
    );
  }
  return `@media print {\n${rules.join("\n")}\n}\n`;
}

/** A string of CSS inside a style element: nothing in it ends either of them. */
function cssText(text: string): string {
  const escaped = text.replace(/[\\"<>\n\r\f]/g, (sign) => `\\${sign.charCodeAt(0).toString(16)} `);
  return `"${escaped}"`;
}
