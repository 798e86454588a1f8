/** What the list says of parts, as findings about stated values tell it. */
import type { ListLine } from "../../model/list/partsList.ts";
import type { Part } from "../../model/parts.ts";
import type { Related } from "../check.ts";
import { textOfLine } from "../lookAlike/textOfLine.ts";
import { cellAt } from "../places.ts";
import { listNames } from "../words.ts";

/** No message tells of more lines than this. */
const MOST_TOLD = 3;
const MOST_RELATED = 5;

/** Parts by the line of the list that they stand on. */
export function groupByLine(parts: Iterable<Part>): Part[][] {
  const groups = new Map<ListLine, Part[]>();
  for (const part of parts) {
    const group = groups.get(part.line);
    if (group) group.push(part);
    else groups.set(part.line, [part]);
  }
  return [...groups.values()];
}

const listedValue = ({ line }: Part): string => textOfLine(line);

/** `47k for R2; 470 for R5`, with what `say` tells of a part. */
export function told(groups: readonly (readonly Part[])[], say = listedValue): string {
  return groups
    .slice(0, MOST_TOLD)
    .map((group) => `${say(group[0]!)} for ${listNames(group)}`)
    .join("; ");
}

/** The cells of the list that say so. */
export function toldAt(
  groups: readonly (readonly Part[])[],
  say = listedValue,
): readonly Related[] {
  return groups.slice(0, MOST_RELATED).map((group) => ({
    at: cellAt(group[0]!.list, group[0]!.line, "value", "description", "designator"),
    message: () => `The list says ${say(group[0]!)} for ${listNames(group)} here.`,
  }));
}

/** The value that the list gives for all of the parts, if it can stand in a guide as it is. */
export function listedByAll(parts: readonly Part[]): string[] {
  const values = new Set(parts.map((part) => part.line.cells.value?.text ?? ""));
  const [value] = values;
  return values.size !== 1 || !value || /[[\]<>`*_\\|~]/.test(value) ? [] : [value];
}
