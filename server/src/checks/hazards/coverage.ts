/**
 * Which hazard notes cover what brings a hazard. A note at a stage's head, or between or inside its
 * steps, covers what follows it in that stage; one before the first stage covers the guide, but for
 * what a stage brings anew. The stages are gone through in order; of those whose text and whose
 * ground stay the same, the results stand as they are.
 */
import type { Guide, Stage, Step } from "../../model/guide.ts";
import type { Span } from "../../text/span.ts";
import type { Hazard } from "../../trade/hazards/hazards.ts";
import { type Before, carriedOn, START, sameBefore } from "./before.ts";
import type { Ground } from "./ground.ts";
import { groundOf } from "./ground.ts";
import type { NoteReading } from "./note.ts";
import { StageReader } from "./stageReader.ts";
import type { Trigger } from "./triggers.ts";

/** A hazard that a step brings, and what is said of it. */
export interface Covered {
  readonly trigger: Trigger;
  readonly hazard: Hazard;
  /** The note that covers it. */
  readonly note: NoteReading | undefined;
  /** Where none does: one of the stage that comes too late. */
  readonly late: NoteReading | undefined;
}

/** What a stage that applies power does about it. */
export interface PowerUp {
  /** The step that applies power first, and the words that say so; counts in its piece. */
  readonly step: Step;
  readonly span: Span;
  /** Whether no stage before has applied power. */
  readonly first: boolean;
  /** Whether the stage limits the current. */
  readonly limit: Timed;
  /** Whether a step looks for faults, in this stage or in one before. */
  readonly inspection: Timed;
  /** Whether a reading is taken once the power is on. */
  readonly reading: boolean;
}

/** Something that is due before the power; `step`: the one that does it too late. */
export type Timed =
  | { readonly when: "before" | "never" }
  | { readonly when: "after"; readonly step: Step };

export interface StageCoverage {
  readonly stage: Stage;
  readonly covered: readonly Covered[];
  readonly powerUp: PowerUp | undefined;
}

interface Known {
  readonly before: Before;
  readonly ground: Ground;
  readonly coverage: StageCoverage;
  readonly after: Before;
}

interface KnownGuide {
  readonly stages: readonly Stage[];
  readonly ground: Ground;
  readonly coverage: readonly StageCoverage[];
}

const KNOWN = new WeakMap<Stage, Known>();
/** Several checks ask for the same guide as it stands. */
const KNOWN_GUIDES = new WeakMap<Guide, KnownGuide>();

/**
 * The stages of the guide, in order, that bring hazards or apply power; none where its language has
 * no word lists.
 */
export function coverageOf(guide: Guide): readonly StageCoverage[] {
  if (!guide.language) return [];
  const { stages } = guide;
  const ground = groundOf(guide);
  const known = KNOWN_GUIDES.get(guide);
  if (known?.stages === stages && known.ground === ground) return known.coverage;
  const coverage = readStages(guide, ground);
  KNOWN_GUIDES.set(guide, { stages, ground, coverage });
  return coverage;
}

function readStages(guide: Guide, ground: Ground): readonly StageCoverage[] {
  const telling: StageCoverage[] = [];
  let before = START;
  for (const stage of guide.stages) {
    const known = KNOWN.get(stage);
    const same = known && known.ground === ground && sameBefore(known.before, before);
    const result = same ? known : readStage(stage, before, ground, guide);
    if (!same) KNOWN.set(stage, result);
    before = carriedOn(result.after, before);
    const { coverage } = result;
    if (coverage.covered.length > 0 || coverage.powerUp) telling.push(coverage);
  }
  return telling;
}

function readStage(stage: Stage, before: Before, ground: Ground, guide: Guide): Known {
  const reader = new StageReader(stage, before, ground, guide);
  return { before, ground, coverage: reader.coverage, after: reader.after };
}
