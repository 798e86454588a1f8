/** A guide at a glance: how far it is, what is wrong, and the parts still to fit. */
import { type Counted, count } from "../checks/count.ts";
import { markItems } from "../checks/words.ts";
import { isMissing } from "../model/accounting.ts";
import type { GuideState } from "../model/guideState.ts";
import type { Part } from "../model/parts.ts";

export interface PartOverview {
  /** Its designator; its board is that of its group. */
  readonly name: string;
  readonly value: string;
  readonly package: string;
}

/** Parts that are next in turn together. */
export interface PartGroup {
  /** Empty where the kit has no boards to tell apart. */
  readonly board: string;
  /** Body height in mm; absent where it is not known, and off the boards. */
  readonly height?: number;
  readonly offBoard: boolean;
  readonly parts: readonly PartOverview[];
  /** The parts as the items of a mark: `R1–R4`, `R7`. */
  readonly items: readonly string[];
}

export interface GuideOverview {
  readonly uri: string;
  readonly title: string | undefined;
  /** Parts to be fitted that no step fits, by board, the lowest first. */
  readonly left: readonly PartGroup[];
  readonly listed: number;
  readonly fitted: number;
  /** Findings in all files of the guide. */
  readonly errors: number;
  readonly warnings: number;
}

/** `findings` are those of all files of the guide. */
export function overviewOf(guide: GuideState, findings: readonly Counted[]): GuideOverview {
  const left = guide.missing.length;
  const listed = guide.parts.filter((part) => isMissing(part, []));
  return {
    uri: guide.pages[0]!.uri,
    title: guide.frontMatter.title?.value,
    left: groupsOf(guide),
    listed: listed.length,
    fitted: listed.length - left,
    errors: count(findings, "error"),
    warnings: count(findings, "warning"),
  };
}

function groupsOf(guide: GuideState): PartGroup[] {
  const hasBoards = guide.boards.length > 1;
  const groups = new Map<string, Part[]>();
  for (const part of [...guide.missing].sort(byBoardAndHeight)) {
    const key = [part.board, part.offBoard, heightOf(part)].join("\n");
    const group = groups.get(key);
    if (group) group.push(part);
    else groups.set(key, [part]);
  }
  return [...groups.values()].map((parts) => groupOf(parts, hasBoards ? parts[0]!.board : ""));
}

function groupOf(parts: readonly Part[], board: string): PartGroup {
  const height = heightOf(parts[0]!);
  return {
    board,
    ...(height !== undefined && { height }),
    offBoard: parts[0]!.offBoard,
    parts: parts.map(partOf),
    items: markItems(parts.map(({ name }) => ({ name }))),
  };
}

function partOf({ name, line: { cells } }: Part): PartOverview {
  return { name, value: cells.value?.text ?? "", package: cells.package?.text ?? "" };
}

function heightOf({ offBoard, height }: Part): number | undefined {
  return offBoard ? undefined : height?.mm;
}

function byBoardAndHeight(a: Part, b: Part): number {
  if (a.board !== b.board) return a.board < b.board ? -1 : 1;
  return rankOf(a) - rankOf(b) || a.id - b.id;
}

/** What is off the boards comes last, after what has no height. */
function rankOf(part: Part): number {
  const none = Number.MAX_VALUE;
  return part.offBoard ? none : (heightOf(part) ?? none / 2);
}
