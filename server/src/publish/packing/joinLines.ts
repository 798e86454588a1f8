/** Lines of one kind of part, where the list has a row for each part: the packer counts them out together. */
import { placesOf } from "../../model/list/supplied.ts";
import { partKind } from "../parts/partKind.ts";
import type { PackedLine } from "./packedLines.ts";

/** Lines of equal parts as one, in the place of the first; lines of hardware stay as they are. */
export function joinLines(lines: readonly PackedLine[]): readonly PackedLine[] {
  const joined = new Map<string, PackedLine[]>();
  for (const packed of lines) {
    const key = kindKey(packed);
    const same = joined.get(key);
    if (same) same.push(packed);
    else joined.set(key, [packed]);
  }
  return [...joined.values()].map(sumOf);
}

/** Sections of a chip are counted with their line, which stays alone. */
function kindKey({ list, line, hardware, status, pieces, parts }: PackedLine): string {
  const isAlone = hardware || pieces === undefined || placesOf(line) < line.designators.length;
  if (isAlone) return `${list.uri} ${line.index}`;
  return [list.uri, line.board ?? parts[0]?.board, status, partKind(line)].join(" ");
}

function sumOf(same: readonly PackedLine[]): PackedLine {
  const [first] = same;
  if (same.length === 1) return first!;
  const sum = (amount: (one: PackedLine) => number) =>
    same.reduce((total, one) => total + amount(one), 0);
  return {
    ...first!,
    lines: same.flatMap(({ lines }) => lines),
    parts: same.flatMap(({ parts }) => parts),
    pieces: sum(({ pieces }) => pieces!),
    spare: sum(({ spare }) => spare),
    surplus: sum(({ surplus }) => surplus),
  };
}
