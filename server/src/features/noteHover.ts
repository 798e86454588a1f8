/** What the author sees on pointing at the opening of a hazard note: its hazard and its sign. */
import { readNote } from "../checks/hazards/note.ts";
import type { GuideState } from "../model/guideState.ts";
import type { NoteFact } from "../syntax/facts.ts";
import type { Signal } from "../syntax/signalWords.ts";
import { shift, touches } from "../text/span.ts";
import { type Harm, harmOf, signalsFor, signOf } from "../trade/hazards/hazards.ts";
import { signMeaning, signSvg } from "../trade/signs/signs.ts";
import { escapeMarkdown } from "./escape.ts";
import type { Hover } from "./hover.ts";
import { pieceAt } from "./pieceAt.ts";

/** Width and height of the sign, in pixels. */
const SIZE = 56;

const HARMS: Readonly<Record<Harm, string>> = {
  damage: "It harms things, not people",
  injury: "It can injure",
  death: "It can kill",
};

const MEANINGS: Readonly<Record<Signal, string>> = {
  DANGER: "what will kill or gravely injure if it is not avoided",
  WARNING: "what can kill or gravely injure",
  CAUTION: "what can injure lightly or moderately",
  NOTICE: "what harms things alone",
};

export function hoverOfNote(guide: GuideState, uri: string, offset: number): Hover | undefined {
  const piece = pieceAt(guide, uri, offset);
  if (!piece) return undefined;
  const fact = piece.facts.facts.find(
    (one): one is NoteFact => one.kind === "note" && touches(one.opening, offset - piece.start),
  );
  if (!fact) return undefined;
  const hazard = guide.language && readNote(piece, fact, guide.language).named;
  const sign = signOf(hazard, fact.signal);
  const markdown = [
    `![${sign}](${picture(signSvg(sign, { size: SIZE }))})`,
    `**${escapeMarkdown(fact.hazard || hazard || fact.signal.toLowerCase())}** · sign ${sign} of ISO 7010: ${signMeaning(sign)}`,
    hazard ? `${HARMS[harmOf(hazard)]}; fitting signal words: ${wordsFor(harmOf(hazard))}.` : "",
    fact.alert ? "" : `${fact.signal} stands for ${MEANINGS[fact.signal]} (ANSI Z535.6).`,
  ];
  return {
    span: shift(fact.opening, piece.start),
    markdown: markdown.filter((text) => text !== "").join("\n\n"),
  };
}

function wordsFor(harm: Harm): string {
  return signalsFor(harm).join(", ");
}

function picture(svg: string): string {
  return `data:image/svg+xml;base64,${btoa(svg)}`;
}
