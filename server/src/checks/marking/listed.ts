/** How findings about marks tell what the list says. */
import type { ListLine } from "../../model/list/partsList.ts";
import type { Related } from "../check.ts";
import { cellAt } from "../places.ts";
import { listNames } from "../words.ts";
import type { CodedPart } from "./codedParts.ts";

/** No message tells of more lines than this. */
const MOST = 3;

/** `4k7 for R1 and R2; 10k for R3`. */
export function listedInShort(parts: readonly CodedPart[]): string {
  const told = byLine(parts)
    .slice(0, MOST)
    .map((group) => {
      const names = listNames(group.map(({ part }) => part));
      return `${listedValue(group[0]!)} for ${names}`;
    });
  return told.join("; ");
}

/** The cells of the list that say so. */
export function listedPlaces(parts: readonly CodedPart[]): readonly Related[] {
  return byLine(parts)
    .slice(0, MOST)
    .map((group) => {
      const { part } = group[0]!;
      const names = listNames(group.map((coded) => coded.part));
      return {
        at: cellAt(part.list, part.line, "value", "description", "designator"),
        message: () => `The list says ${listedValue(group[0]!)} for ${names} here.`,
      };
    });
}

function byLine(parts: readonly CodedPart[]): CodedPart[][] {
  const groups = new Map<ListLine, CodedPart[]>();
  for (const coded of parts) {
    const group = groups.get(coded.part.line);
    if (group) group.push(coded);
    else groups.set(coded.part.line, [coded]);
  }
  return [...groups.values()];
}

function listedValue({ part }: CodedPart): string {
  const { cells } = part.line;
  return cells.value?.text || cells.description?.text || "";
}
