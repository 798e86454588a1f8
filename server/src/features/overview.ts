/** A guide at a glance: how far it is, what is wrong, and the parts still to fit. */
import { type Counted, count } from "../checks/count.ts";
import { isMissing } from "../model/accounting.ts";
import type { GuideState } from "../model/guideState.ts";
import type { Part } from "../model/parts.ts";

export interface PartOverview {
  /** As a mark names it; with its board where the kit has several. */
  readonly name: string;
  readonly board: string;
  readonly value: string;
  readonly package: string;
  /** Body height in mm. */
  readonly height: number | undefined;
}

export interface GuideOverview {
  readonly uri: string;
  readonly title: string | undefined;
  /** Parts to be fitted that no step fits, by board, the lowest first. */
  readonly left: readonly PartOverview[];
  readonly listed: number;
  readonly fitted: number;
  /** Findings in all files of the guide. */
  readonly errors: number;
  readonly warnings: number;
}

/** `findings` are those of all files of the guide. */
export function overviewOf(guide: GuideState, findings: readonly Counted[]): GuideOverview {
  const left = [...guide.missing].sort(byBoardAndHeight);
  const listed = guide.parts.filter((part) => isMissing(part, []));
  return {
    uri: guide.pages[0]!.uri,
    title: guide.frontMatter.title?.value,
    left: left.map((part) => partOf(part, guide)),
    listed: listed.length,
    fitted: listed.length - left.length,
    errors: count(findings, "error"),
    warnings: count(findings, "warning"),
  };
}

function partOf(part: Part, guide: GuideState): PartOverview {
  const { value, package: footprint } = part.line.cells;
  return {
    name: guide.boards.length > 1 && part.board ? `${part.board}/${part.name}` : part.name,
    board: part.board,
    value: value?.text ?? "",
    package: footprint?.text ?? "",
    height: part.offBoard ? undefined : part.height?.mm,
  };
}

function byBoardAndHeight(a: Part, b: Part): number {
  if (a.board !== b.board) return a.board < b.board ? -1 : 1;
  return (a.height?.mm ?? Number.MAX_VALUE) - (b.height?.mm ?? Number.MAX_VALUE) || a.id - b.id;
}
