/** Renames a part in its parts list: the cell is edited in place, everything else stays. */

import type { GuideState } from "../../model/guideState.ts";
import type { ListedDesignator, ListLine, PartsList } from "../../model/list/partsList.ts";
import type { ReadOptions } from "../../model/list/read.ts";
import { readPartsList } from "../../model/list/read.ts";
import type { Part } from "../../model/parts.ts";
import { designatorKey } from "../../syntax/designators.ts";
import { applyEdits, type Span, type TextEdit } from "../../text/span.ts";
import { type ChainStyle, type Link, renameInChain } from "./chainText.ts";
import type { NewName } from "./edit.ts";

/** Edits of the list, or why the part cannot be renamed in it. */
export function renameInList(
  guide: GuideState,
  part: Part,
  name: NewName,
  options: ReadOptions,
): { readonly edits: readonly TextEdit[] } | { readonly problem: string } {
  const { list } = part;
  if (list.format === "workbook") return { problem: WORKBOOK };
  if (list.format === "netlist") return { problem: NETLIST };
  const lines = list.lines.filter((line) => line.board === part.line.board && has(line, name.from));
  const edits = [
    ...lines.flatMap((line) => inLine(list, line, name)),
    ...inSocket(guide, part, name),
  ];
  const problem = whatGoesWrong(list, edits, name, lines, options);
  return problem ? { problem } : { edits };
}

const WORKBOOK =
  "The parts list is a workbook, which an editor of text cannot change. Rename the part there first; the guide's findings then lead to its places.";

const NETLIST =
  "The parts list is a netlist, which the layout program would write over, and whose nets name the part, too. Rename the part in that program and export the netlist again; the guide's findings then lead to its places.";

function has({ designators }: ListLine, name: string): boolean {
  const key = designatorKey(name);
  return designators.some((one) => designatorKey(one.name) === key);
}

function inLine(list: PartsList, line: ListLine, name: NewName): readonly TextEdit[] {
  const key = designatorKey(name.from);
  const links = linksOf(line.designators, (one) => designatorKey(one) === key);
  return renameInChain(list.text, links, name, styleOf(list, line, links));
}

/** Members of a range share its place. */
function linksOf(
  designators: readonly ListedDesignator[],
  isMeant: (name: string) => boolean,
): readonly Link[] {
  const links: { span: Span; names: string[] }[] = [];
  for (const { name, span } of designators) {
    const last = links.at(-1);
    if (last && last.span.start === span.start && last.span.end === span.end) last.names.push(name);
    else links.push({ span, names: [name] });
  }
  return links.map(({ span, names }) => ({
    span,
    names,
    isRange: names.length > 1,
    board: undefined,
    mayGrow: false,
    isMeant,
  }));
}

/** As the cell parts its designators already; else by a space, which needs no quotes. */
function styleOf({ text, format }: PartsList, line: ListLine, links: readonly Link[]): ChainStyle {
  const [first, second] = links;
  const between = first && second ? text.slice(first.span.end, second.span.start) : "";
  if (/^\s*[,;/&+]\s*$|^\s+$/.test(between)) return { separator: between, sign: "-" };
  const cell = line.cells.designator?.span.start ?? line.span.start;
  const isOpen = format === "markdown" || text[cell - 1] === '"';
  return { separator: isOpen ? ", " : " ", sign: "-" };
}

/** The line of a socket may name its chip in words (`socket for U3`). */
function* inSocket(guide: GuideState, part: Part, { from, to }: NewName): Iterable<TextEdit> {
  const socket = guide.socketOf(part);
  if (!socket || socket === part || socket.list !== part.list) return;
  const { value, description, notes } = socket.line.cells;
  for (const cell of [value, description, notes]) {
    if (!cell) continue;
    const source = part.list.text.slice(cell.span.start, cell.span.end);
    for (const { 0: word, index } of source.matchAll(/[\p{L}\p{N}_$]+/gu)) {
      if (designatorKey(word) !== designatorKey(from)) continue;
      const start = cell.span.start + index;
      yield { span: { start, end: start + word.length }, text: to };
    }
  }
}

/** Reads the list as it would be: nothing but the one name may differ. */
function whatGoesWrong(
  list: PartsList,
  edits: readonly TextEdit[],
  name: NewName,
  lines: readonly ListLine[],
  options: ReadOptions,
): string | undefined {
  const after = readPartsList(list.uri, applyEdits(list.text, edits), options);
  const isSame =
    after.lines.length === list.lines.length &&
    after.lines.every((line, index) => {
      const before = list.lines[index]!;
      const wanted = before.designators.map((one) => one.name);
      const expected = lines.includes(before) ? renameAll(wanted, name) : wanted;
      const found = line.designators.map((one) => one.name);
      return sameNames(found, expected);
    });
  if (isSame && after.problems.length === list.problems.length) return undefined;
  const row = lines[0]?.row;
  return `The cell in line ${row} of the parts list cannot be changed so that it is read as before. Give ${name.from} its new name there by hand.`;
}

function renameAll(names: readonly string[], { from, to }: NewName): readonly string[] {
  return names.map((one) => (designatorKey(one) === designatorKey(from) ? to : one));
}

function sameNames(a: readonly string[], b: readonly string[]): boolean {
  return a.length === b.length && a.every((one, index) => one === b[index]);
}
