/**
 * Texts that were meant as ranges and are none: `R3-`, `R3 –`, `R3..R`, `R3-R5-R7`. The reader of
 * designators takes them for words or remarks; only the known class letters tell them from the names
 * of nets and pads (`IN1-`, `BUS-OUT`).
 */
import type { DesignatorList, Place } from "../../syntax/designatorItems.ts";
import { readDesignator } from "../../syntax/designators.ts";
import type { ReadName, ReadProblem } from "../../syntax/listedNames.ts";
import { classesOfLetters } from "../../trade/classLetters.ts";

const SIGN = /[-\u2010-\u2014\u2212~～…/]|\.{1,3}/u;
const LONE_SIGN = new RegExp(`^(?:${SIGN.source})$`, "u");
/** No broken range that anybody writes is longer. */
const MAX_LENGTH = 60;

/** The list with the designators of broken ranges read and each of these reported. */
export function mendRanges(list: DesignatorList, text: string, place: Place): DesignatorList {
  if (list.words === 0 && list.remarks.length === 0) return list;
  const names: ReadName[] = [];
  const problems: ReadProblem[] = [];
  let { words } = list;
  for (const one of list.names) {
    const found = readDesignator(one.name) ? undefined : designatorsIn(one.name);
    if (!found) {
      names.push(one);
      continue;
    }
    words--;
    names.push(...found.map((name) => ({ name, span: one.span })));
    problems.push({ span: one.span, message: complaint(one.name, found) });
  }
  const remarks = list.remarks.filter((remark) => {
    const shown = text.slice(remark.start, remark.end);
    const found = designatorsIn(shown);
    const isLone = !found && list.names.length > 0 && LONE_SIGN.test(shown);
    if (!found && !isLone) return true;
    const span = place(remark.start, remark.end);
    names.push(...(found ?? []).map((name) => ({ name, span })));
    problems.push({ span, message: found ? complaint(shown, found) : LONE });
    return false;
  });
  return { ...list, names, words, remarks, problems: [...list.problems, ...problems] };
}

/** Designators of one known class, parted by signs; letters may be carried on or stand alone. */
function designatorsIn(text: string): string[] | undefined {
  if (text.length > MAX_LENGTH || !/\d/.test(text)) return undefined;
  const parts = text.split(SIGN).map((part) => part.trim());
  if (parts.length < 2) return undefined;
  let letters: string | undefined;
  const found: string[] = [];
  for (const part of parts) {
    const carried = letters !== undefined && /^[1-9]/.test(part) ? letters + part : part;
    const designator = readDesignator(carried);
    if (designator) {
      letters ??= designator.letters;
      if (designator.letters !== letters) return undefined;
      found.push(carried);
    } else if (part !== "" && part !== letters) {
      return undefined;
    }
  }
  return letters !== undefined && classesOfLetters(letters).length > 0 ? found : undefined;
}

function complaint(text: string, found: readonly string[]): string {
  if (found.length === 1 && /^[^./]*(?:\.(?!\.)|\/)$/.test(text)) {
    return `"${text}" is read as ${found[0]}. Delete the sign, or write what is missing after it.`;
  }
  if (found.length === 1) {
    return `"${text}" looks like a range, but has only one end, so only ${found[0]} is read. Write both ends, or ${found[0]} alone.`;
  }
  const all = `${found.slice(0, -1).join(", ")} and ${found.at(-1)}`;
  return `"${text}" is no range that can be read; ${all} are read as single parts. Write two ends for a range, and commas between single parts.`;
}

const LONE =
  "This sign continues a range, but nothing follows it, so only the designator before it is read. Write the range's other end, or delete the sign.";
