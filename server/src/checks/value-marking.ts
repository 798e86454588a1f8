/** Colour bands or a printed mark that the text names contradict the list's value. */
import type { Step } from "../model/guide.ts";
import type { TextBlock } from "../model/prose.ts";
import type { Language } from "../text/language.ts";
import type { Check, Finding } from "./check.ts";
import { judgeBands } from "./marking/bandFindings.ts";
import { bandRuns } from "./marking/bandRuns.ts";
import { wearsBands } from "./marking/bands.ts";
import { type CodedPart, codedParts } from "./marking/codedParts.ts";
import { judgeMark } from "./marking/markFindings.ts";
import { printedMarks } from "./marking/printedMarks.ts";
import { worded } from "./marking/worded.ts";

export const check: Check = {
  meta: {
    code: "value-marking",
    summary: "Colour bands or a printed mark named in the text contradict the list's value.",
    severity: "warning",
    source: "IEC 60062; EIA-198 for capacitors",
    late: true,
    tags: ["parts"],
  },
  *piece(piece, { language }) {
    for (const step of piece.steps) if (step.marks.length > 0) yield* ofStep(step, language);
  },
};

/** Cells of a table are compared by `stated-value`, row by row. */
function* ofStep(step: Step, language: Language | undefined): Generator<Finding> {
  const blocks = step.prose.filter(({ fact }) => !fact.quoted && fact.block !== "cell");
  const runs = language ? blocks.flatMap((block) => runsIn(block, language)) : [];
  const marks = blocks.flatMap(marksIn);
  // Few steps speak of bands or print, and many have parts that wear them.
  if (runs.length === 0 && marks.length === 0) return;
  const groups = codedParts(step);
  if (language) yield* ofBands(runs, groups, language);
  const coded = groups.flat();
  if (coded.length === 0) return;
  for (const { mark, piece } of marks) {
    const finding = judgeMark(mark, coded, piece);
    if (finding) yield finding;
  }
}

function runsIn(block: TextBlock, language: Language) {
  return bandRuns(worded(block), language).map((run) => ({ run, piece: block.piece }));
}

function marksIn(block: TextBlock) {
  return [...printedMarks(worded(block))].map((mark) => ({ mark, piece: block.piece }));
}

function* ofBands(
  runs: readonly ReturnType<typeof runsIn>[number][],
  groups: readonly CodedPart[][],
  language: Language,
): Generator<Finding> {
  const banded = groups
    .map((group) => group.filter(wearsBands))
    .filter((group) => group.length > 0);
  if (banded.length === 0) return;
  // As many rows of bands as marks: each row belongs to the mark of its turn.
  const paired = runs.length === banded.length;
  for (const [turn, { run, piece }] of runs.entries()) {
    const finding = judgeBands(run, paired ? banded[turn]! : banded.flat(), piece, language);
    if (finding) yield finding;
  }
}
