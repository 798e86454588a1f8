/** Where the values of names come from, with links to the places. */
import { placeOf } from "../../checks/verdict.ts";
import { partName } from "../../checks/words.ts";
import type { GuideFigure, Meaning } from "../../model/figures/figure.ts";
import type { GuideState } from "../../model/guideState.ts";
import type { NameUse } from "../../quantity/expression/tree.ts";
import { printLimits } from "../../quantity/printRange.ts";
import { LineIndex } from "../../text/lines.ts";
import { escapeMarkdown } from "../escape.ts";
import { numberOf } from "./workings.ts";

/** Names beyond this number are left out: a hover is no list. */
const MOST_NAMES = 12;

/** A line for each name in the figure's expression, each name once. */
export function origins(figure: GuideFigure, guide: GuideState): readonly string[] {
  const told = new Map<string, string>();
  for (const { use } of figure.formula?.names ?? []) {
    const name = nameOf(use);
    if (told.has(name)) continue;
    const line = origin(name, guide.figures.meaning(use, figure.board), guide);
    if (line) told.set(name, line);
  }
  const lines = [...told.values()];
  const left = lines.length - MOST_NAMES;
  return left > 0 ? [...lines.slice(0, MOST_NAMES), `- … and ${left} more`] : lines;
}

/** `- Iq: 45 mA (40.5 mA … 49.5 mA), from the front matter, line 7`; none for units and constants. */
function origin(name: string, meaning: Meaning, guide: GuideState): string | undefined {
  const shown = `- ${escapeMarkdown(name)}: `;
  const number = numberOf(meaning) ?? "no value";
  switch (meaning.kind) {
    case "figure": {
      const value = meaning.figure.evaluation?.value;
      const limits = value && value.min < value.max ? ` (${printLimits(value)})` : "";
      return `${shown}${number}${limits}, ${placeText(meaning.figure, guide)}`;
    }
    case "part": {
      const { part } = meaning;
      const tolerance = part.line.tolerance ? ` ± ${part.line.tolerance}` : "";
      const link = linkTo(part.list.uri, part.line.row, `line ${part.line.row}`);
      const what = part.name === name ? "" : ` of ${escapeMarkdown(partName(part))}`;
      return `${shown}${number}${tolerance}, listed${what} in ${link}`;
    }
    default:
      return undefined;
  }
}

/** `defined in step 3.2`, `from the front matter, line 7`, each leading there. */
export function placeText(figure: GuideFigure, guide: GuideState): string {
  const { uri, span } = placeOf(figure.at());
  const page = guide.pages.find((one) => one.uri === uri)!;
  const line = new LineIndex(page.text.toString()).positionAt(span.start).line + 1;
  if (!figure.piece) return `from the ${linkTo(uri, line, "front matter")}`;
  const where = figure.step ? `step ${figure.step.number}` : `line ${line}`;
  return `${figure.figure.reading ? "read" : "defined"} in ${linkTo(uri, line, where)}`;
}

function linkTo(uri: string, line: number, text: string): string {
  return `[${text}](${uri.replace(/[()<>\s]/g, encodeURIComponent)}#L${line})`;
}

function nameOf({ symbol, subjects, board }: NameUse): string {
  const bare = board ? `${board}/${symbol}` : symbol;
  return subjects.length === 0 ? bare : `${bare}(${subjects.map((one) => one.text).join(", ")})`;
}
