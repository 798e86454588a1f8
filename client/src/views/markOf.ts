/** The part mark that is put into the text for what the author takes from the view of parts. */
import type { SentPart, SentPartGroup } from "../../../server/src/lsp/protocol.ts";

/** Parts of one group: all of it, or one. */
export interface Choice {
  readonly group: SentPartGroup;
  readonly part?: SentPart;
}

/**
 * The part mark that fits these parts, each once. Within a mark a board holds for what follows it, so
 * parts without one come first.
 */
export function markOf(choices: readonly Choice[]): string {
  const whole = new Set(choices.filter(({ part }) => !part).map(({ group }) => group));
  const boards = new Map<string, string[]>([["", []]]);
  for (const { group, part } of choices) {
    if (part && whole.has(group)) continue;
    const items = part ? [part.name] : group.items;
    boards.set(group.board, [...(boards.get(group.board) ?? []), ...items]);
  }
  const texts = [...boards].map(([board, items]) => (board && `${board}/`) + items.join(", "));
  return `[${texts.filter((text) => text !== "").join(", ")}]`;
}
