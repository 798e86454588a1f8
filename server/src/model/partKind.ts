/** What kind of part a line of the list is, all its words taken together. */
import { type PartClass, partClass } from "../trade/partClass.ts";
import type { ListLine } from "./list/partsList.ts";
import type { Part } from "./parts.ts";

/** What was found of a line; nearly always all its parts are named with the same letters. */
interface KnownKind {
  readonly letters: string;
  readonly kind: PartClass;
}

const KNOWN = new WeakMap<ListLine, KnownKind>();

export function kindOfLine(line: ListLine, letters: string): PartClass {
  const known = KNOWN.get(line);
  if (known?.letters === letters) return known.kind;
  const { value, package: footprint, description } = line.cells;
  const kind = partClass(letters, {
    value: value?.text,
    package: footprint?.text,
    description: description?.text,
  });
  KNOWN.set(line, { letters, kind });
  return kind;
}

export function kindOf(part: Part): PartClass {
  return kindOfLine(part.line, part.letters);
}
