/** Carries designators that a revised list numbers anew through a guide. */
import type { GuideState } from "../../model/guideState.ts";
import type { Part } from "../../model/parts.ts";
import { designatorKey, readDesignator } from "../../syntax/designators.ts";
import { type Span, shift, type TextEdit } from "../../text/span.ts";
import { namingsIn } from "../naming/namings.ts";
import { renameInGuide } from "../rename/guideText.ts";
import { numberOf, readRangeText } from "../rename/rangeText.ts";

/** A part of the old list, and its designator in the new one. */
export interface Renumbering {
  readonly from: string;
  /** Empty where the list names no boards. */
  readonly board: string;
  readonly to: string;
}

export interface RenumberRound {
  readonly edits: ReadonlyMap<string, readonly TextEdit[]>;
  /** Whether nothing is left for another round on the edited text. */
  readonly isLast: boolean;
}

/**
 * Edits for the guide as it stands under the old list. Two parts of one mark cannot be renamed at a
 * time, since what is written of one hangs on its neighbours: the second waits for the next round.
 */
export function renumberRound(
  guide: GuideState,
  list: string,
  pairs: readonly Renumbering[],
): RenumberRound {
  const names = newNames(guide, list, pairs);
  const taken = new TakenEdits(guide);
  for (const edit of wholeRanges(guide, names)) taken.take([edit]);
  for (const [part, to] of names) {
    taken.take(renameInGuide(guide, part, { from: part.name, to }));
  }
  return { edits: taken.edits, isLast: !taken.left };
}

function newNames(
  guide: GuideState,
  list: string,
  pairs: readonly Renumbering[],
): ReadonlyMap<Part, string> {
  const names = new Map<Part, string>();
  for (const part of guide.parts) {
    if (part.list.uri !== list) continue;
    const pair = pairs.find(
      ({ from, board }) =>
        designatorKey(from) === designatorKey(part.name) &&
        (board === "" || board === part.line.board),
    );
    if (pair) names.set(part, pair.to);
  }
  return names;
}

/** Ranges all of whose parts are numbered on as they were stay ranges. */
function* wholeRanges(guide: GuideState, names: ReadonlyMap<Part, string>) {
  for (const piece of guide.pieces) {
    for (const { span, named, board } of namingsIn(piece)) {
      if (named.kind !== "range") continue;
      const fresh = named.names.map((name) => {
        const { part } = guide.kit.find(name, named.board, board);
        return part && names.get(part);
      });
      const place = shift(span, piece.start);
      const text = piece.page.text.slice(place.start, place.end);
      const written = readRangeText(text, named.names[0]!);
      if (!written || !isRun(fresh)) continue;
      const last = /^\d/.test(written.last) ? numberOf(fresh.at(-1)!) : fresh.at(-1)!;
      const range = written.board + fresh[0]! + written.sign + last;
      yield { uri: piece.page.uri, span: place, text: range };
    }
  }
}

/** Whether the names are numbered one after the other. */
function isRun(names: readonly (string | undefined)[]): names is readonly string[] {
  const read = names.map((name) => readDesignator(name ?? ""));
  return read.every((one, index) => {
    const before = read[index - 1] ?? one;
    if (one?.suffix !== "") return false;
    return (
      one.letters === before!.letters && Number(one.digits) === Number(read[0]!.digits) + index
    );
  });
}

interface PlacedEdit extends TextEdit {
  readonly uri: string;
}

/** Edits that keep out of each other's way: in one mark, or one stretch of text, those of one part. */
class TakenEdits {
  readonly edits = new Map<string, TextEdit[]>();
  /** Whether some had to be left. */
  left = false;
  readonly #marks: ReadonlyMap<string, readonly Span[]>;
  readonly #regions = new Map<string, Span[]>();

  constructor(guide: GuideState) {
    this.#marks = marksOf(guide);
  }

  /** Takes those of a part whose places are free. */
  take(edits: readonly PlacedEdit[]): void {
    const own = new Set<Span>();
    for (const { uri, span, text } of edits) {
      const region = this.#regionOf(uri, span);
      const there = this.#regions.get(uri) ?? [];
      const inWay = there.find((one) => one.start <= region.end && region.start <= one.end);
      if (inWay && !own.has(inWay)) {
        this.left = true;
        continue;
      }
      if (!inWay) {
        own.add(region);
        this.#regions.set(uri, [...there, region]);
      }
      this.edits.set(uri, [...(this.edits.get(uri) ?? []), { span, text }]);
    }
  }

  /** The mark in which an edit stands, else the place itself. */
  #regionOf(uri: string, span: Span): Span {
    const mark = this.#marks
      .get(uri)
      ?.find(({ start, end }) => start <= span.start && span.end <= end);
    return mark ?? { ...span };
  }
}

function marksOf(guide: GuideState): ReadonlyMap<string, readonly Span[]> {
  const marks = new Map<string, Span[]>();
  for (const { page, start, marks: own } of guide.pieces) {
    const there = marks.get(page.uri) ?? [];
    for (const { mark } of own) there.push(shift(mark.span, start));
    marks.set(page.uri, there);
  }
  return marks;
}
