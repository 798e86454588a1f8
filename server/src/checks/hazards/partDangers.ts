/** What the parts list tells of a part's dangers. */
import type { ListLine } from "../../model/list/partsList.ts";
import type { Part, Supply } from "../../model/parts.ts";
import type { Role } from "../../syntax/dialect.ts";
import { isFuse, isMainsPart } from "../../trade/hazards/mainsParts.ts";
import { HEAVY, massIn } from "../../trade/hazards/masses.ts";
import { isStaticSensitive } from "../../trade/hazards/staticParts.ts";
import { type PartClass, type PartHints, partClass } from "../../trade/partClass.ts";

interface LineDangers {
  readonly class: PartClass;
  readonly isStatic: boolean;
  readonly isMains: boolean;
  readonly isFuse: boolean;
}

const KNOWN = new WeakMap<ListLine, LineDangers>();

/** All parts of a line are of a kind, and nearly always named with the same letters. */
function dangersOf({ line, letters }: Part): LineDangers {
  const known = KNOWN.get(line);
  if (known) return known;
  const { value, package: packaged, description } = line.cells;
  const hints: PartHints = {
    value: value?.text,
    package: packaged?.text,
    description: description?.text,
  };
  const dangers = {
    class: partClass(letters, hints),
    isStatic: isStaticSensitive(letters, hints),
    isMains: isMainsPart(letters, hints),
    isFuse: isFuse(letters, hints),
  };
  KNOWN.set(line, dangers);
  return dangers;
}

export function classOf(part: Part): PartClass {
  return dangersOf(part).class;
}

/** Whether a mark of that role puts a part in the builder's hands that dies of static. */
export function isStaticPart(part: Part, role: Role): boolean {
  // Where a chip shares its designator with its socket, only the socket is soldered in.
  return dangersOf(part).isStatic && !(role === "fit" && part.socketLine);
}

/** Whether the part is connected to the mains; fuses count in a kit that has such parts. */
export function carriesMains(part: Part): boolean {
  return dangersOf(part).isMains;
}

export function isFusePart(part: Part): boolean {
  return dangersOf(part).isFuse;
}

/** Classes that are screwed on, pushed in or not on a board at all. */
const UNSOLDERED: ReadonlySet<PartClass> = new Set<PartClass>([
  "hardware",
  "heat sink",
  "fuse",
  "battery",
  "tube",
  "unknown",
]);

/** Whether fitting the part means to solder it. */
export function isSoldered(part: Part): boolean {
  return !part.offBoard && !UNSOLDERED.has(dangersOf(part).class);
}

/** Whether the list states a mass that is a load to lift. */
export function isHeavy({ line }: Supply): boolean {
  const { value, description, notes } = line.cells;
  return [value, description, notes].some((cell) => (massIn(cell?.text ?? "") ?? 0) >= HEAVY);
}
