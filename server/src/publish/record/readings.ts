/** All readings of a guide, for the record that is kept of a built kit. */
import type { Stage } from "../../model/guide.ts";
import type { GuideState } from "../../model/guideState.ts";
import { type ShownReading, shownReading } from "../figures.ts";

export interface RecordRow {
  /** Number of the step; undefined for a reading outside the steps. */
  readonly step: string | undefined;
  readonly stage: Stage | undefined;
  readonly reading: ShownReading;
}

/** In document order. */
export function readingsOf(guide: GuideState): RecordRow[] {
  return guide.pieces.flatMap((piece) =>
    guide.figures
      .ofPiece(piece)
      .filter(({ figure }) => figure.reading)
      .map(({ figure, step }) => ({
        step: step?.number,
        stage: step?.stage,
        reading: shownReading(figure, piece, guide),
      })),
  );
}
