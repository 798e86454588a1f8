/** What kind of part a line of the list is, all its words taken together. */
import { type PartClass, partClass } from "../trade/partClass.ts";
import type { ListLine } from "./list/partsList.ts";
import type { Part } from "./parts.ts";

export function kindOfLine(line: ListLine, letters: string): PartClass {
  const { value, package: footprint, description } = line.cells;
  return partClass(letters, {
    value: value?.text,
    package: footprint?.text,
    description: description?.text,
  });
}

export function kindOf(part: Part): PartClass {
  return kindOfLine(part.line, part.letters);
}
