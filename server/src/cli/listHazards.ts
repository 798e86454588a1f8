/** `kitquill list hazards`: what brings a hazard in a guide, where, and which note covers it. */
import { type Covered, coverageOf } from "../checks/hazards/coverage.ts";
import { openingOf } from "../checks/hazards/tell.ts";
import type { GuidePiece } from "../model/guide.ts";
import type { GuideState } from "../model/guideState.ts";
import { LineIndex } from "../text/lines.ts";
import type { Diagnosis } from "../workspace/diagnoses.ts";
import { shownPath } from "./shownPath.ts";
import { type Column, formatTable, type TableFormat } from "./table.ts";
import type { Terminal } from "./terminal.ts";

/** `allowed`: no note covers it, and a comment or a setting says that none need. */
type State = "covered" | "late" | "missing" | "allowed";

type Row = Readonly<{
  step: string;
  hazard: string;
  state: State;
  evidence: string;
  /** The opening of the note that covers it, or comes too late. */
  note: string | null;
  noteFile: string | null;
  noteLine: number | null;
  file: string;
  line: number;
}>;

const COLUMNS: readonly Column<Row>[] = [
  { field: "step", title: "Step" },
  { field: "hazard", title: "Hazard" },
  { field: "state", title: "State" },
  { field: "evidence", title: "The step" },
  { field: "note", title: "Note" },
  { field: "noteFile", title: "Note's file", hidden: true },
  { field: "noteLine", title: "Note's line", hidden: true },
  { field: "file", title: "File", hidden: true },
  { field: "line", title: "Line", hidden: true },
];

/** One row for each hazard that a step brings. `diagnoses`: what the guide's check shows. */
export function hazardsOfGuide(
  guide: GuideState,
  diagnoses: readonly Diagnosis[],
  format: TableFormat,
  cwd: string,
  { paint }: Terminal,
): string {
  const places = new Places(guide, cwd);
  const told = new Set(diagnoses.map(({ code, uri, span }) => `${code} ${uri} ${span.start}`));
  const rows = coverageOf(guide).flatMap(({ covered }) =>
    covered.map((one): Row => {
      const { trigger, hazard } = one;
      const { piece } = trigger.step;
      const note = one.note ?? one.late;
      const noted = note && places.of(note.piece, note.fact.span.start);
      return {
        step: trigger.step.number,
        hazard,
        state: stateOf(one, told),
        evidence: trigger.evidence,
        note: note ? openingOf(note) : null,
        noteFile: noted?.file ?? null,
        noteLine: noted?.line ?? null,
        ...places.of(piece, trigger.span.start),
      };
    }),
  );
  return formatTable(rows, COLUMNS, format, paint);
}

function stateOf({ trigger, note, late }: Covered, told: ReadonlySet<string>): State {
  if (note) return "covered";
  const { page, start } = trigger.step.piece;
  const code = late ? "hazard-late" : "hazard-missing";
  if (!told.has(`${code} ${page.uri} ${start + trigger.span.start}`)) return "allowed";
  return late ? "late" : "missing";
}

/** Files and one-based lines of places in the guide. */
class Places {
  readonly #lines: ReadonlyMap<string, LineIndex>;
  readonly #cwd: string;

  constructor(guide: GuideState, cwd: string) {
    this.#lines = new Map(
      guide.pages.map((page) => [page.uri, new LineIndex(page.text.toString())]),
    );
    this.#cwd = cwd;
  }

  of({ page, start }: GuidePiece, offset: number): { file: string; line: number } {
    const { line } = this.#lines.get(page.uri)!.positionAt(start + offset);
    return { file: shownPath(page.uri, this.#cwd), line: line + 1 };
  }
}
