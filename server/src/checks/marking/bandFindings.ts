/** The finding about a run of bands that does not fit the parts it speaks of. */

import type { GuidePiece } from "../../model/guide.ts";
import { formatQuantity } from "../../quantity/formatQuantity.ts";
import type { Language } from "../../text/language.ts";
import { shift } from "../../text/span.ts";
import type { BandReading, Colour } from "../../trade/marking/colours.ts";
import { wordOfColour } from "../../trade/marking/colourWords.ts";
import type { Finding, Fix } from "../check.ts";
import { textAt } from "../places.ts";
import { told, toldAt } from "../values/listed.ts";
import { listNames } from "../words.ts";
import type { BandRun } from "./bandRuns.ts";
import { bandsLike, fits, percentOf, readRun } from "./bands.ts";
import { type CodedPart, linesOf } from "./codedParts.ts";

/** Undefined where the bands fit one of the parts. */
export function judgeBands(
  run: BandRun,
  parts: readonly CodedPart[],
  piece: GuidePiece,
  language: Language,
): Finding | undefined {
  const { forward } = readRun(run.colours);
  const how = forward ? parts.map((coded) => fits(coded, forward, run.colours.length)) : [];
  if (how.includes("fully")) return undefined;
  const near = parts.filter((_, place) => how[place] === "in value");
  const bands = bandsOfAll(run, near.length > 0 ? near : parts);
  const shown = textAt(piece, run);
  const right = bands && wordsOf(bands, language);
  return {
    at: { piece, span: run },
    message: () => {
      const advice = right
        ? `Correct the bands to ${right.join(" ")}, or the list.`
        : "Correct the bands or the list.";
      if (!forward) return `${unreadable(shown, run, parts)} ${advice}`;
      if (near.length > 0) return `${wrongTolerance(near, forward)} ${advice}`;
      return `${wrongValue(shown, forward, parts)} ${advice}`;
    },
    related: toldAt(linesOf(parts)),
    fixes: right && bands ? [() => rewrite(run, right, piece)] : [],
  };
}

function wrongValue(shown: string, { ohms, tolerances }: BandReading, parts: readonly CodedPart[]) {
  const isInductor = parts.every(({ kind }) => kind === "inductor");
  const said = isInductor
    ? { amount: ohms * 1e-6, unit: "H" as const }
    : { amount: ohms, unit: "Ω" as const };
  const tolerance = tolerances.map((percent) => `${percent} %`).join(" or ");
  return `The bands ${shown} say ${formatQuantity(said)} ±${tolerance}, but the parts list says ${told(linesOf(parts))}. A builder who goes by the colours fits the wrong part.`;
}

function wrongTolerance(near: readonly CodedPart[], { tolerances }: BandReading) {
  const said = tolerances.map((percent) => `±${percent} %`).join(" or ");
  const names = listNames(near.map(({ part }) => part));
  return `The tolerance band says ${said}, but the parts list says ${percentOf(near[0]!.part)} % for ${names}. The builder looks for bands that are not on the part.`;
}

function unreadable(shown: string, { colours }: BandRun, parts: readonly CodedPart[]): string {
  const { backward } = readRun(colours);
  const turned = backward && parts.some((coded) => fits(coded, backward, colours.length) !== "not");
  return turned
    ? `The bands ${shown} stand the wrong way round: read from the other end they say ${told(linesOf(parts))}.`
    : `The bands ${shown} mean nothing in this order, and the parts list says ${told(linesOf(parts))}.`;
}

/** The bands of the parts, if they are the same for all. */
function bandsOfAll(run: BandRun, parts: readonly CodedPart[]): readonly Colour[] | undefined {
  const all = parts.map((coded) => bandsLike(run.colours, coded));
  const [first] = all;
  return first && all.every((one) => one?.join() === first.join()) ? first : undefined;
}

function wordsOf(bands: readonly Colour[], language: Language): readonly string[] {
  return bands.map((colour) => wordOfColour(colour, language));
}

/** Word by word where there are as many, so that commas and dashes stay. */
function rewrite(run: BandRun, right: readonly string[], piece: GuidePiece): Fix {
  const edits =
    right.length === run.words.length
      ? run.words.map((word, place) => ({ span: shift(word, piece.start), text: right[place]! }))
      : [{ span: shift(run, piece.start), text: right.join(" ") }];
  return {
    title: `Write ${right.join(" ")}, as in the list`,
    safe: false,
    edits: [{ uri: piece.page.uri, edits }],
  };
}
