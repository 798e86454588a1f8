/** Lists in columns of blanks below a header, or below a header and a rule that draws the columns. */
import { isDesignatorList } from "../../../syntax/designatorList.ts";
import {
  FixedRow,
  Gutters,
  isBlank,
  isRule,
  type Piece,
  piecesOf,
  type TextLine,
} from "../../../syntax/fixedWidth.ts";
import type { HeaderLookup, Section } from "../sections.ts";
import { mayListParts } from "./lineParts.ts";

/** Names that a header has at most. */
const MAX_NAMES = 60;

/** The blocks below headers whose lines keep to their columns. */
export function headedSections(lines: readonly TextLine[], lookup: HeaderLookup): Section[] {
  const sections: Section[] = [];
  for (let at = 0; at < lines.length; ) {
    const names = headerNames(lines[at]!.text, lookup);
    const block = names && blockBelow(lines, at, names, lookup);
    if (block) sections.push(block.section);
    at = block?.next ?? at + 1;
  }
  return sections;
}

/** The words of a line that heads columns: two known ones among the first, one for designators. */
function headerNames(line: string, lookup: HeaderLookup): Piece[] | undefined {
  const names = piecesOf(line, 1);
  if (names.length < 2 || names.length > MAX_NAMES) return undefined;
  const known = names.map(({ text }) => lookup.of(text));
  const isHeader =
    known.slice(0, 3).filter((name) => name !== undefined).length >= 2 &&
    known.some((name) => name?.ranks.has("designator")) &&
    !names.some(({ text }) => isDesignatorList(text) || /[,;|]$/.test(text));
  return isHeader ? names : undefined;
}

function blockBelow(
  lines: readonly TextLine[],
  at: number,
  names: readonly Piece[],
  lookup: HeaderLookup,
): { section: Section; next: number } | undefined {
  const header = lines[at]!;
  const ruled = ruledColumns(lines[at + 1]?.text ?? "", header.text);
  const gutters = new Gutters(ruled ?? names, ruled !== undefined);
  const rows: TextLine[] = [];
  let next = at + 1;
  /** What follows the last rule is a footer unless it holds designators. */
  let ruledOff = 0;
  for (; next < lines.length; next++) {
    const line = lines[next]!;
    if (isRule(line.text)) ruledOff = rows.length;
    else if (headerNames(line.text, lookup) || !gutters.take(line.text)) break;
    else rows.push(line);
  }
  const cuts = gutters.cuts();
  if (cuts.length === 0) return undefined;
  const tail = rows.slice(ruledOff);
  const kept = tail.some(({ text }) => mayListParts(text)) ? rows : rows.slice(0, ruledOff);
  if (kept.length === 0) return undefined;
  const cut = kept.map((line) => new FixedRow(line, cuts));
  // A torn row that may list parts is left out here and found as a stray line.
  const whole = cut.filter((row, i) => !row.isTorn || !mayListParts(kept[i]!.text));
  return { section: { header: new FixedRow(header, cuts), rows: whole }, next };
}

/** Columns as a rule below the header draws them: `------ ---- -----`. */
function ruledColumns(rule: string, header: string): Piece[] | undefined {
  if (!isRule(rule)) return undefined;
  const drawn = piecesOf(rule, 1);
  if (drawn.length < 2) return undefined;
  const fits = drawn.slice(1).every(({ start }) => isBlank(header, start - 1));
  return fits ? drawn : undefined;
}
