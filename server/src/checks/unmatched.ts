/** The list supplies parts to pick from, and no step tells the builder to pick. */
import type { ListLine } from "../model/list/partsList.ts";
import type { Check, Finding } from "./check.ts";
import { cellAt, useAt } from "./places.ts";
import { isFitting } from "./progress.ts";
import { listNames } from "./words.ts";

/**
 * Words by which lists say that parts are picked for likeness: en, de, fr, es, nl.
 * `matching` alone is left out: networks and transformers match impedances.
 */
const PICKED =
  /(?<!\p{L})(?:matched(?! (?:impedance|load|line))|match(?:ing)? (?:pairs?|sets?|quads?|to|by|within)|for matching(?=$|[\s]*[.,;)])|hand[- ]?picked|(?:select|pick)(?:ed)? (?:for|from|by|on)|gepaart\p{L}*|ausgesucht\p{L}*|selektiert\p{L}*|appari[ée]e?s?|emparejad[oa]s?|aparead[oa]s?|gepaarde?|geselecteerde?)(?!\p{L})/imu;

export const check: Check = {
  meta: {
    code: "unmatched",
    summary: "The list supplies parts to match, and no step matches them.",
    severity: "information",
    source: "common practice",
    tags: ["parts"],
  },
  *line(line, list, guide) {
    if (!line.fitted || line.optional || line.designators.length < 2) return;
    const said = PICKED.test(textOf(line));
    const surplus = (line.quantity ?? 0) - (line.spare ?? 0) - line.designators.length;
    if (!said && surplus <= 0) return;
    const uses = guide.partsOf(line).flatMap((part) => guide.uses(part));
    const fitting = uses.find(isFitting);
    if (!fitting || uses.some((use) => use.role === "match")) return;
    const finding: Finding = {
      at: cellAt(list, line, said ? "notes" : "quantity", "description", "value", "designator"),
      message: () => (said ? saidMessage(line) : surplusMessage(line)),
      related: [{ at: useAt(fitting), message: () => "Fitted here, without having been matched." }],
    };
    yield finding;
  },
};

function textOf(line: ListLine): string {
  const { notes, description, value } = line.cells;
  return [notes, description, value].map((cell) => cell?.text ?? "").join("\n");
}

function saidMessage(line: ListLine): string {
  const [first, second] = line.designators;
  return `The list says that ${listNames(line.designators)} are picked to match, but no step tells the builder to. Add one before they are fitted: [match: ${first!.name}+${second!.name}].`;
}

function surplusMessage(line: ListLine): string {
  const [first, second] = line.designators;
  return `The list supplies ${line.quantity} for the ${line.designators.length} places ${listNames(line.designators)}. If the builder picks from them, add a step with [match: ${first!.name}+${second!.name}]; if the rest are spares, say so in the list.`;
}
