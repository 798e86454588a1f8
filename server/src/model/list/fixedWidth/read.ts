/**
 * Parts lists in columns of blanks, as layout programs print them. They are read only where the
 * columns are certain: each line keeps to what the header, its rule or all lines together say.
 */
import { type TextLine, textLines } from "../../../syntax/fixedWidth.ts";
import type { Span } from "../../../text/span.ts";
import type { Overrides } from "../columns.ts";
import type { ListProblem, PartsList } from "../partsList.ts";
import { readSections } from "../readSections.ts";
import { HeaderLookup, type Section } from "../sections.ts";
import { isRuled } from "../textKind.ts";
import { type ListText, unreadable } from "../unreadable.ts";
import { bareSections, withoutRepetition } from "./bare.ts";
import { headedSections } from "./headed.ts";
import { hasDesignator, mayListParts } from "./lineParts.ts";

/** Longer texts and lines are no list that someone printed. */
const MAX_FIXED = 2 * 2 ** 20;
const MAX_LINE = 5_000;

/**
 * The list, or one finding at the first line that leaves its columns; undefined where the text is
 * none in columns of blanks.
 */
export function readFixedWidth(file: ListText, overrides: Overrides): PartsList | undefined {
  const { text } = file;
  if (text.length > MAX_FIXED || text.includes("\t") || !isRuled(text)) return undefined;
  const all = textLines(text);
  if (all.some((line) => line.text.length > MAX_LINE)) return undefined;
  const lookup = new HeaderLookup(Object.values(overrides));
  const headed = headedSections(all, lookup);
  const { lines, repeated } = headed.length > 0 ? { lines: all } : withoutRepetition(all);
  const sections = headed.length > 0 ? headed : bareSections(lines);
  if (sections.length === 0) return undefined;
  const source = { ...file, format: "fixed width" } as const;
  const list = readSections(source, sections, lookup, overrides);
  if (!list || list.lines.length === 0) return undefined;
  const stray = strayLine(lines, sections);
  if (stray) return unreadable(file, OUTSIDE, spanOf(stray));
  return repeated ? { ...list, problems: [...list.problems, problemOf(repeated)] } : list;
}

const OUTSIDE =
  "This line holds designators, but does not keep to the columns of the lines around it, so it is not certain which cells they are in, and nothing is read. Move its cells below those of the other lines, or save the parts list as CSV.";

/** The first line with designators that belongs to no section. */
function strayLine(lines: readonly TextLine[], sections: readonly Section[]): TextLine | undefined {
  const taken = new Set(sections.flatMap(({ rows }) => rows.map(({ line }) => line)));
  return lines.find(({ number, text }) => {
    if (taken.has(number)) return false;
    const isBeside = taken.has(number - 1) || taken.has(number + 1);
    return mayListParts(text) || (isBeside && hasDesignator(text));
  });
}

function problemOf({ first, again }: { first: TextLine; again: TextLine }): ListProblem {
  const message = `From here on the file repeats the list that begins on line ${first.number}. It is read once; delete the repetition.`;
  return { code: "repeated-designator", span: spanOf(again), message, other: spanOf(first) };
}

function spanOf({ start, text }: TextLine): Span {
  return { start, end: start + text.length };
}
