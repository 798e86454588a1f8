/** What an update of a guide changed. */
import type { FigureChanges } from "./figures/sheet.ts";
import type { Supply } from "./parts.ts";
import type { PieceNode } from "./pieceNode.ts";

/** For those who keep results by piece, part or stage. */
export interface GuideChanges {
  /** Everything is new: the parts lists or what the guide says of them changed. */
  readonly all: boolean;
  readonly retired: readonly PieceNode[];
  readonly admitted: readonly PieceNode[];
  readonly supplies: ReadonlySet<Supply>;
  readonly figures: FigureChanges;
}

/** Two changes, one after the other, as one. */
export function together(first: GuideChanges, then: GuideChanges): GuideChanges {
  if (then.all) return then;
  const gone = new Set(then.retired);
  const figuresGone = new Set(then.figures.gone);
  const admitted = [...first.admitted, ...then.admitted].filter((piece) => !gone.has(piece));
  const figures = [...first.figures.changed, ...then.figures.changed];
  return {
    all: first.all,
    retired: [...first.retired, ...then.retired],
    admitted: [...new Set(admitted)],
    supplies: new Set([...first.supplies, ...then.supplies]),
    figures: {
      gone: [...first.figures.gone, ...then.figures.gone],
      changed: new Set(figures.filter((one) => !figuresGone.has(one))),
    },
  };
}
