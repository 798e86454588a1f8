/**
 * What a check is. A check names one problem; its file is named after its code.
 * The engine calls only the hooks whose ground has changed, so a hook may depend on nothing but
 * what it is given: `unusual` on the uses of that part (and of its socket or chip),
 * `mark` on the mark, `stage` on the stage's marks, `line` on the uses of the line's parts, on which of
 * them other findings explain and on whether the guide reaches its end, `list` on the list, `figure` on the figure, on what it and its name's definition come to and on its step's
 * marks, `guide` on anything, but it runs after every edit and must be cheap.
 */
import type { GuideFigure } from "../model/figures/figure.ts";
import type { Anchor, Guide, GuidePiece, ResolvedMark, Stage, Step, Use } from "../model/guide.ts";
import type { ListLine, PartsList } from "../model/list/partsList.ts";
import type { Hardware, Part } from "../model/parts.ts";
import type { TextEdit } from "../text/span.ts";

export type Severity = "error" | "warning" | "information" | "hint";

export interface CheckMeta {
  /** Kebab-case; also the file's and the page's name. */
  readonly code: string;
  /** One line for lists and settings. */
  readonly summary: string;
  readonly severity: Severity;
  /** Where the rule comes from: a standard, or "common practice". */
  readonly source: string;
  /**
   * Reads the words of the text, which takes long for a whole guide: its findings come after those
   * of the others. Such a check explains no parts.
   */
  readonly late?: true;
  readonly tags: readonly (
    | "parts"
    | "order"
    | "figures"
    | "list"
    | "form"
    | "wording"
    | "safety"
  )[];
  /** A number that the author may set: in the front matter (`checks`) or the settings. */
  readonly limit?: Limit;
}

export interface Limit {
  readonly default: number;
  /** One line for the settings: what is counted, in which unit. */
  readonly summary: string;
}

/** A set of edits that removes a finding. */
export interface Fix {
  readonly title: string;
  /** Safe fixes change no meaning; `kitquill check --fix` applies only these. */
  readonly safe: boolean;
  readonly edits: readonly { readonly uri: string; readonly edits: readonly TextEdit[] }[];
}

export interface Related {
  readonly at: Anchor;
  readonly message: () => string;
}

/**
 * Messages are made late, because step numbers in them follow edits elsewhere. Beside step numbers and
 * the front matter they, and what is related, depend on no more than their hook: what is shown of a
 * finding is kept.
 */
export interface Finding {
  readonly at: Anchor;
  readonly message: () => string;
  /** Other than the check's own severity. */
  readonly severity?: Severity;
  readonly related?: readonly Related[];
  /** Each gives a fix, or undefined when it would not be safe where the text stands now. */
  readonly fixes?: readonly (() => Fix | undefined)[];
  /** Parts that the finding explains, so that `missing-part` stays silent about them. */
  readonly explains?: readonly Part[];
}

/** What nearly all hooks give nearly always: `figure` is asked for thousands when a rail changes. */
export const NO_FINDINGS: readonly Finding[] = [];

export interface Check {
  readonly meta: CheckMeta;
  mark?(mark: ResolvedMark, guide: Guide): Iterable<Finding>;
  piece?(piece: GuidePiece, guide: Guide): Iterable<Finding>;
  /** Only for parts that are not ordinary (`isOrdinary`): nearly all parts are. */
  unusual?(part: Part, uses: readonly Use[], guide: Guide): Iterable<Finding>;
  hardware?(hardware: Hardware, uses: readonly Use[], guide: Guide): Iterable<Finding>;
  line?(line: ListLine, list: PartsList, guide: Guide): Iterable<Finding>;
  /** `before` and `after`: the tallest part in place on each board when the stage begins and ends. */
  stage?(stage: Stage, before: BoardTops, guide: Guide): StageResult;
  list?(list: PartsList, guide: Guide): Iterable<Finding>;
  figure?(figure: GuideFigure, guide: Guide): Iterable<Finding>;
  guide?(guide: Guide): Iterable<Finding>;
}

/** The use that put the tallest part in place, by board and side. */
export type BoardTops = ReadonlyMap<string, Use>;

export interface StageResult {
  readonly findings: Iterable<Finding>;
  readonly after: BoardTops;
}

export type { Anchor, Guide, Stage, Step, Use };
