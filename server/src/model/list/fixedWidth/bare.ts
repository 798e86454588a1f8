/** Lists in columns of blanks without a header: each cell stands below one of the line above. */
import { FixedRow, isBlank, piecesOf, type TextLine } from "../../../syntax/fixedWidth.ts";
import type { Section } from "../sections.ts";
import { barePieces, hasDesignator, mayListParts } from "./lineParts.ts";

/** Fewer lines may stand below one another by chance. */
const FEWEST_LINES = 3;
/** Shorter lists may repeat themselves by chance. */
const FEWEST_REPEATED = 4;
const MAX_COLUMNS = 60;

/** Lines without a header, each cell below one of the others. */
export function bareSections(lines: readonly TextLine[]): Section[] {
  const sections: Section[] = [];
  for (let at = 0; at < lines.length; ) {
    let next = at;
    while (next < lines.length && isNext(lines, at, next)) next++;
    const run = lines.slice(at, next);
    const cuts = run.length >= FEWEST_LINES ? bareCuts(run) : undefined;
    if (cuts)
      sections.push({ header: undefined, rows: run.map((line) => new FixedRow(line, cuts)) });
    at = Math.max(next, at + 1);
  }
  return sections;
}

/** Whether the line holds designators and stands directly below the one before. */
function isNext(lines: readonly TextLine[], first: number, at: number): boolean {
  const isBelow = at === first || lines[at]!.number === lines[at - 1]!.number + 1;
  return isBelow && mayListParts(lines[at]!.text);
}

function bareCuts(lines: readonly TextLine[]): number[] | undefined {
  const starts = new Set<number>();
  for (const { text } of lines) {
    for (const { start } of barePieces(text)) starts.add(start);
    if (starts.size > MAX_COLUMNS) return undefined;
  }
  const [first = 0, ...others] = [...starts].sort((a, b) => a - b);
  const cuts = first > 0 ? [first, ...others] : others;
  const isClear = lines.every(({ text }) =>
    others.every((cut) => isBlank(text, cut - 1) && isBlank(text, cut - 2)),
  );
  return isClear && others.length > 0 ? cuts.map((cut) => cut - 1) : undefined;
}

/**
 * Programs print a list twice, by designator and by value. The lines without the second list, and
 * where that begins.
 */
export function withoutRepetition(lines: readonly TextLine[]): {
  lines: readonly TextLine[];
  repeated?: { first: TextLine; again: TextLine };
} {
  const listed = lines.filter(({ text }) => hasDesignator(text));
  const half = listed.length / 2;
  const again = listed[half];
  if (!again || half < FEWEST_REPEATED) return { lines };
  const words = ({ text }: TextLine) =>
    piecesOf(text, 1)
      .map((piece) => piece.text)
      .sort()
      .join(" ");
  const before = listed.slice(0, half).map(words).sort();
  const after = listed.slice(half).map(words).sort();
  if (before.some((text, i) => text !== after[i])) return { lines };
  return {
    lines: lines.filter(({ number }) => number < again.number),
    repeated: { first: listed[0]!, again },
  };
}
