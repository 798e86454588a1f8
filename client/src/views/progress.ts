/** What the status bar says of a guide, and what a click on it opens: what is left to do. */
import type { SentOverview } from "../../../server/src/lsp/protocol.ts";

export interface Progress {
  readonly text: string;
  readonly tooltip: string;
  readonly command: string;
}

const PARTS_LEFT = "kitquill.partsLeft.focus";
const PROBLEMS = "workbench.panel.markers.view.focus";

export function progressOf({ fitted, listed, errors, warnings }: SentOverview): Progress {
  const counts = listed === 0 ? "no parts listed" : `${fitted} of ${listed} fitted`;
  const icons = [
    ...(errors > 0 ? [`$(error) ${errors}`] : []),
    ...(warnings > 0 ? [`$(warning) ${warnings}`] : []),
  ];
  const left = listed - fitted;
  const hasFindings = icons.length > 0;
  const parts = partsText(listed, left);
  return {
    text: [`$(checklist) ${counts}`, ...icons].join("  "),
    tooltip:
      left > 0
        ? `${parts} Click to see what is left.`
        : hasFindings
          ? `${parts} Click to see what is found wrong.`
          : parts,
    command: left === 0 && hasFindings ? PROBLEMS : PARTS_LEFT,
  };
}

function partsText(listed: number, left: number): string {
  if (listed === 0) return "The guide names no parts list that lists a part.";
  if (left === 0) return "Every part of the list is fitted in a step.";
  return `${left === 1 ? "1 part is" : `${left} parts are`} fitted in no step yet.`;
}
