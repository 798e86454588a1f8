/**
 * Parts that seem to be the same under another designator. Layout programs renumber by place on the
 * board; nothing in the lists proves it, so it is a guess.
 */
import { readDesignator } from "../../syntax/designators.ts";
import type { ComparedPart } from "./compareLists.ts";
import type { Quality } from "./qualities.ts";

/**
 * Pairs removed and added parts of equal class, board and qualities, in the order of their numbers,
 * which renumbering mostly keeps. Where more went than came, or the reverse, nothing tells which is
 * which, and none is paired.
 */
export function findRenumbered(
  removed: readonly ComparedPart[],
  added: readonly ComparedPart[],
  compared: readonly Quality[],
) {
  const kinds = new Map<string, { gone: ComparedPart[]; come: ComparedPart[] }>();
  const kindOf = (part: ComparedPart) => {
    const letters = readDesignator(part.name)?.letters ?? "";
    const told = compared.map((quality) => part.qualities[quality]?.key ?? "");
    const key = [letters, part.board.toLowerCase(), ...told].join("\n");
    const kind = kinds.get(key) ?? { gone: [], come: [] };
    kinds.set(key, kind);
    return kind;
  };
  for (const part of removed) if (part.qualities.value) kindOf(part).gone.push(part);
  for (const part of added) if (part.qualities.value) kindOf(part).come.push(part);
  const renumbered: { from: ComparedPart; to: ComparedPart }[] = [];
  for (const { gone, come } of kinds.values()) {
    if (gone.length !== come.length) continue;
    const [from, to] = [gone.sort(byNumber), come.sort(byNumber)];
    for (const [i, part] of from.entries()) renumbered.push({ from: part, to: to[i]! });
  }
  const paired = new Set(renumbered.flatMap(({ from, to }) => [from, to]));
  return {
    renumbered,
    gone: removed.filter((part) => !paired.has(part)),
    come: added.filter((part) => !paired.has(part)),
  };
}

function byNumber(a: ComparedPart, b: ComparedPart): number {
  return numberOf(a) - numberOf(b);
}

function numberOf({ name }: ComparedPart): number {
  return Number(readDesignator(name)?.digits ?? 0);
}
