/** How messages name parts, steps and amounts, so that all checks speak alike. */
import type { Use } from "../model/guide.ts";
import type { Hardware } from "../model/parts.ts";
import { readDesignator } from "../syntax/designators.ts";

export interface Named {
  readonly name: string;
  /** Empty or absent where the kit has one board only. */
  readonly board?: string;
}

/** Names beyond this number are counted, not sorted in, so that a list costs the same at any size. */
const SORTED = 200;

/** `R17`, or `relay/R17` in a kit of several boards. */
export function partName(part: Named): string {
  return part.board ? `${part.board}/${part.name}` : part.name;
}

/** `step 4.2` */
export function stepName(use: Pick<Use, "step">): string {
  return `step ${use.step.number}`;
}

/**
 * Names in short: `R1–R4, R7 and C3`. Three or more in a row become a range; beyond `most` entries
 * the rest is counted (`and 12 more`).
 */
export function listNames(parts: readonly Named[], most = 10): string {
  const runs = runsOf(parts.slice(0, SORTED).sort(inOrder));
  const shown = runs.length > most ? runs.slice(0, most) : runs;
  const rest = parts.length - shown.reduce((sum, run) => sum + run.length, 0);
  const entries = shown.map(runName);
  if (rest > 0) entries.push(`${rest} more`);
  return joinWords(entries, "and");
}

/** Names as the items of a mark, in order: `R1–R4`, `R7`, `C3`. */
export function markItems(parts: readonly Named[]): string[] {
  return runsOf([...parts].sort(inOrder)).map(runName);
}

/** `a, b and c` */
export function joinWords(words: readonly string[], last: "and" | "or"): string {
  if (words.length < 2) return words.join("");
  return `${words.slice(0, -1).join(", ")} ${last} ${words.at(-1)}`;
}

/** `8 × M3x10` */
export function pieces(count: number, hardware: Hardware): string {
  return `${count} × ${hardware.name}`;
}

/** What a use takes of its line: `8 × M3x10`, `820 mm of CuL 1.0`. */
export function usedAmount({ count, metres }: Use, hardware: Hardware): string {
  return metres === undefined
    ? pieces(count ?? 1, hardware)
    : `${lengthText(metres)} of ${hardware.name}`;
}

/** `820 mm` or `2.5 m` */
export function lengthText(metres: number): string {
  const round = (x: number) => Number(x.toPrecision(6));
  return metres < 1 ? `${round(metres * 1000)} mm` : `${round(metres)} m`;
}

interface Run {
  readonly first: Named;
  last: Named;
  length: number;
}

function runsOf(parts: readonly Named[]): Run[] {
  const runs: Run[] = [];
  for (const part of parts) {
    const run = runs.at(-1);
    if (run && follows(run.last, part)) {
      run.last = part;
      run.length++;
    } else {
      runs.push({ first: part, last: part, length: 1 });
    }
  }
  return runs.flatMap((run) => (run.length === 2 ? [single(run.first), single(run.last)] : [run]));
}

function single(part: Named): Run {
  return { first: part, last: part, length: 1 };
}

function runName(run: Run): string {
  const first = partName(run.first);
  return run.length === 1 ? first : `${first}–${run.last.name}`;
}

function follows(a: Named, b: Named): boolean {
  const left = readDesignator(a.name);
  const right = readDesignator(b.name);
  if (!left || !right || left.suffix || right.suffix) return false;
  return (
    (a.board ?? "") === (b.board ?? "") &&
    left.letters === right.letters &&
    Number(left.digits) + 1 === Number(right.digits)
  );
}

function inOrder(a: Named, b: Named): number {
  const left = readDesignator(a.name);
  const right = readDesignator(b.name);
  return (
    compareText(a.board ?? "", b.board ?? "") ||
    compareText(left?.letters ?? a.name, right?.letters ?? b.name) ||
    Number(left?.digits ?? 0) - Number(right?.digits ?? 0) ||
    compareText(left?.suffix ?? "", right?.suffix ?? "")
  );
}

/** By code units: the same order on every machine. */
function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
