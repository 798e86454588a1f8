/** What the author should know of a mark that has sets picked: the work, and what it can bring. */
import type { GuideState } from "../../model/guideState.ts";
import { type Matching, matchingOf } from "../../model/matching.ts";
import type { MarkNode, PieceNode } from "../../model/pieceNode.ts";
import { printNumber } from "../../quantity/printing.ts";
import { touches } from "../../text/span.ts";
import { comparisons, type ExpectedSpread, expectedSpread } from "../../trade/matching/expected.ts";
import { pieceAt } from "../pieceAt.ts";
import { shown } from "./shown.ts";

/** One paragraph, or empty where no set is picked at the offset. */
export function matchNotes(guide: GuideState, uri: string, offset: number): string {
  const piece = pieceAt(guide, uri, offset);
  const at = offset - (piece?.start ?? 0);
  const found = piece?.marks.find(({ mark }) => mark.role === "match" && touches(mark.span, at));
  const matching = found && matchingOf(found.mark, piece!, guide);
  if (!matching) return "";
  const { sets, size, lot } = matching;
  const expected = expectedOnce(lot, sets.length, size);
  const told = [work(matching), ...(expected ? [prospect(matching, expected)] : [])];
  const allowed = expected && allowance(found!, piece!, guide, expected);
  return [...told, ...(allowed ? [allowed] : [])].join(" ");
}

/** `Picks 2 pairs from 6 parts: 6 readings, or 15 comparisons of each with each.` */
function work({ sets, size, lot }: Matching): string {
  const picked =
    size === 2 ? counted(sets.length, "pair") : `${counted(sets.length, "set")} of ${size}`;
  const effort = `${lot} readings, or ${comparisons(lot)} comparisons of each with each`;
  return `Picks ${picked} from ${lot} parts: ${effort}.`;
}

function prospect({ sets, size }: Matching, { total, largest }: ExpectedSpread): string {
  const one = size === 2 ? "pair" : "set";
  const scatter = "where readings scatter by σ (standard deviation, normal distribution)";
  if (sets.length === 1)
    return `Expect the best ${one} to spread about ${sigmas(total)} ${scatter}.`;
  const mean = sigmas(total / sets.length);
  return `Expect about ${mean} a ${one}, ${sigmas(largest)} in the worst, ${scatter}.`;
}

/** From the limit that a reading of the same step sets. */
function allowance(
  { step }: MarkNode,
  piece: PieceNode,
  guide: GuideState,
  { largest }: ExpectedSpread,
): string | undefined {
  const limits = guide.figures
    .ofPiece(piece)
    .filter((one) => one.step === step && one.figure.reading?.limit === "below");
  const value = limits[0]?.evaluation?.value;
  if (limits.length !== 1 || !value || !(value.max > 0)) return undefined;
  const limit = shown(value.max, value.unit);
  const scatter = shown(value.max / largest, value.unit);
  return `To stay below the ${limit} of this step on average, the lot may scatter by ${scatter}.`;
}

function sigmas(amount: number): string {
  return `${printNumber(amount, 2)} σ`;
}

function counted(count: number, word: string): string {
  return `${count} ${word}${count === 1 ? "" : "s"}`;
}

const KEPT = new Map<string, ExpectedSpread | undefined>();
const MOST_KEPT = 200;

/** Guides ask for few kinds of sets, and authors point at them more than once. */
function expectedOnce(lot: number, sets: number, size: number): ExpectedSpread | undefined {
  const key = `${lot} ${sets} ${size}`;
  if (!KEPT.has(key)) {
    if (KEPT.size >= MOST_KEPT) KEPT.clear();
    KEPT.set(key, expectedSpread(lot, sets, size));
  }
  return KEPT.get(key);
}
