/** Designators that stand on two lines, and lists that stand in their file twice. */
import { designatorKey } from "../../syntax/designators.ts";
import type { TableRow } from "../../syntax/tableRow.ts";
import type { Span } from "../../text/span.ts";
import { classesNamed, withoutAdded } from "../../trade/partWords.ts";
import type { ListedDesignator, ListLine, ListProblem } from "./partsList.ts";

/** Shorter lists may repeat themselves by chance. */
const FEWEST_LINES = 4;

/** Where the second half of the lines repeats the first word for word: only the first is kept. */
export function dropRepeatedList(lines: readonly ListLine[]): {
  lines: readonly ListLine[];
  problem?: ListProblem;
} {
  const half = lines.length / 2;
  if (half < FEWEST_LINES || !Number.isInteger(half)) return { lines };
  for (let i = 0; i < half; i++) if (!isSame(lines[i]!, lines[i + half]!)) return { lines };
  const [first, last, second] = [lines[0]!, lines[half - 1]!, lines[half]!];
  const message = `From here on the file repeats the list from ${first.place} to ${last.place} word for word. It is read once; delete the repetition.`;
  return {
    lines: lines.slice(0, half),
    problem: { code: "repeated-designator", span: second.span, message, other: first.span },
  };
}

function isSame(a: ListLine, b: ListLine): boolean {
  return (
    a.quantity === b.quantity &&
    a.board === b.board &&
    a.designators.length === b.designators.length &&
    a.cells.designator?.text === b.cells.designator?.text &&
    a.cells.value?.text === b.cells.value?.text &&
    a.cells.description?.text === b.cells.description?.text
  );
}

/** A designator and the line that lists it first. */
interface Repeat {
  readonly listed: ListedDesignator;
  readonly first: ListLine;
}

/**
 * Problems for designators listed before on the same board. A chip and its socket may share theirs,
 * and so may variants and alternatives of which one is fitted. `rows`: each line's own.
 */
export function findRepeats(lines: readonly ListLine[], rows: readonly TableRow[]): ListProblem[] {
  if (isRising(lines)) return [];
  const boards = new Map<string, Map<string, ListLine>>();
  const problems: ListProblem[] = [];
  let board: string | undefined;
  let seen = new Map<string, ListLine>();
  for (const line of lines) {
    if (line.board !== board || boards.size === 0) {
      board = line.board;
      seen = seenOn(board?.toLowerCase() ?? "", boards);
    }
    let repeats: Repeat[] | undefined;
    for (const listed of line.designators) {
      const key = designatorKey(listed.name);
      const first = seen.get(key);
      if (!first) seen.set(key, line);
      else if (!mayShare(first, line, rows)) {
        repeats ??= [];
        repeats.push({ listed, first });
      }
    }
    if (!repeats) continue;
    for (const group of byPlace(repeats)) problems.push(problemOf(group, line));
  }
  return problems;
}

/** Whether the numbers of each class only rise, as in most long lists: then none comes twice. */
function isRising(lines: readonly ListLine[]): boolean {
  const highest = new Map<string, number>();
  for (const { designators } of lines) {
    for (const { name } of designators) {
      const digits = lettersBefore(name);
      const letters = name.slice(0, digits);
      const number = Number(name.slice(digits));
      // Of what is no capital letters and a number, nothing is told.
      if (digits === 0 || !(number > (highest.get(letters) ?? -1))) return false;
      highest.set(letters, number);
    }
  }
  return true;
}

/** How many capital letters the name begins with. */
function lettersBefore(name: string): number {
  let at = 0;
  for (let code = name.charCodeAt(0); code >= 65 && code <= 90; code = name.charCodeAt(++at));
  return at;
}

function seenOn(board: string, boards: Map<string, Map<string, ListLine>>): Map<string, ListLine> {
  const seen = boards.get(board) ?? new Map<string, ListLine>();
  boards.set(board, seen);
  return seen;
}

/** Members of a range stand in one place and make one problem. */
function byPlace(repeats: readonly Repeat[]): Iterable<readonly Repeat[]> {
  const groups = new Map<Span, Repeat[]>();
  for (const repeat of repeats) {
    const group = groups.get(repeat.listed.span);
    if (group) group.push(repeat);
    else groups.set(repeat.listed.span, [repeat]);
  }
  return groups.values();
}

function problemOf(group: readonly Repeat[], line: ListLine): ListProblem {
  const { listed, first } = group[0]!;
  const names = group.length === 1 ? listed.name : `${listed.name} … ${group.at(-1)!.listed.name}`;
  const are = group.length === 1 ? "is" : "are";
  const where =
    first === line
      ? "twice in this cell"
      : `${first.place.startsWith("row") ? "in" : "on"} ${first.place} already`;
  return {
    code: "repeated-designator",
    span: listed.span,
    message: `${names} ${are} listed ${where}. A designator names one part, so one of the two is wrong. If they are on different boards, add a column Board.`,
    line: line.index,
    other: firstPlace(listed.name, first),
  };
}

function firstPlace(name: string, line: ListLine): Span {
  const key = designatorKey(name);
  return line.designators.find((one) => designatorKey(one.name) === key)!.span;
}

/** Words by which a row says that it stands for another one. */
const INSTEAD =
  /(?<!\p{L})(?:alternativ\p{L}*|alternate|substitut\p{L}*|or:|oder:|instead|statt|ersatzweise|au lieu|en lugar|in plaats)(?!\p{L})/iu;
const HOLDER =
  /(?<!\p{L})(?:sockets?|z[oó]calos?|sockel|fassung|support|voet(?:je)?|holder|\p{L}*halter|\p{L}*houder)(?!\p{L})/iu;

function mayShare(a: ListLine, b: ListLine, rows: readonly TableRow[]): boolean {
  if (a === b) return false;
  if (!a.fitted || !b.fitted) return true;
  const [first, second] = [textOf(rows[a.index]!), textOf(rows[b.index]!)];
  if (INSTEAD.test(first) || INSTEAD.test(second)) return true;
  return isHolder(first) !== isHolder(second);
}

function isHolder(cells: string): boolean {
  const text = withoutAdded(cells.toLowerCase());
  return HOLDER.test(text) || classesNamed(text).some((one) => /socket|holder/.test(one));
}

/** All cells but the longest, which are remarks and addresses. */
function textOf(row: TableRow): string {
  const texts: string[] = [];
  for (let column = 0; column < row.width; column++) {
    const text = row.text(column);
    if (text.length < 100) texts.push(text);
  }
  return texts.join(" ");
}
