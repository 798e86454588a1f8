/** Completion of sets: `all R`, `rest of C`. */
import type { GuideState } from "../../model/guideState.ts";
import type { Kit } from "../../model/kit.ts";
import type { Part } from "../../model/parts.ts";
import { describeSupplies } from "../hover.ts";
import type { Completion } from "./completion.ts";
import type { Kind } from "./kinds.ts";

/** Classes with fewer parts left are as quickly named. */
const FEWEST = 3;

/** Sets of the classes that the kinds still to be fitted belong to. */
export function setCompletions(
  guide: GuideState,
  kinds: readonly Kind[],
  typed: string,
): readonly Completion[] {
  const wanted = typed.toLowerCase();
  const items: Completion[] = [];
  for (const [letters, left] of countByClass(kinds)) {
    if (left < FEWEST || !/^\p{Lu}{1,5}$/u.test(letters)) continue;
    const which = left === fittedOf(guide.kit).get(letters) ? "all" : "rest of";
    const label = `${which} ${letters}`;
    if (!label.startsWith(wanted)) continue;
    items.push({
      label,
      kind: "set",
      detail: `${left} parts`,
      documentation: () => describeSupplies(partsOf(kinds, letters), guide),
    });
  }
  return items;
}

function countByClass(kinds: readonly Kind[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const { parts } of kinds) add(counts, parts[0]!, parts.length);
  return counts;
}

function partsOf(kinds: readonly Kind[], letters: string): readonly Part[] {
  return kinds.flatMap(({ parts }) => (classOf(parts[0]!) === letters ? parts : []));
}

const FITTED = new WeakMap<Kit, ReadonlyMap<string, number>>();

/** How many parts of each class the list has for fitting; counted once for a kit. */
function fittedOf(kit: Kit): ReadonlyMap<string, number> {
  const known = FITTED.get(kit);
  if (known) return known;
  const counts = new Map<string, number>();
  for (const part of kit.parts) if (part.fitted) add(counts, part, 1);
  FITTED.set(kit, counts);
  return counts;
}

function add(counts: Map<string, number>, part: Part, by: number): void {
  const letters = classOf(part);
  counts.set(letters, (counts.get(letters) ?? 0) + by);
}

function classOf({ letters }: Part): string {
  return letters.toUpperCase();
}
