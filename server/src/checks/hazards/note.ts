/** What a hazard note says: of which hazards, what comes of them, how they are avoided. */
import type { GuidePiece } from "../../model/guide.ts";
import type { NoteFact } from "../../syntax/facts.ts";
import type { Language } from "../../text/language.ts";
import type { Word } from "../../text/stems.ts";
import { actLexicon } from "../../trade/acts/lexicon.ts";
import type { Hazard } from "../../trade/hazards/hazards.ts";
import { type HazardLexicon, hazardLexicon, hazardNamed } from "../../trade/hazards/lexicon.ts";
import { BlockSentence } from "./told.ts";

export interface NoteReading {
  readonly piece: GuidePiece;
  readonly fact: NoteFact;
  /** The hazard that its name means, where the lists know it. */
  readonly named: Hazard | undefined;
  /** All that it names or unmistakably describes: these it covers. */
  readonly hazards: ReadonlySet<Hazard>;
  readonly hasConsequence: boolean;
  readonly hasAvoidance: boolean;
  /** What its text says outright may happen. */
  readonly says: Readonly<Record<"hurts" | "kills" | "breaks", boolean>>;
}

/**
 * How long a note is taken to say how, in whatever words. Of damage it often does so by telling how
 * things are when they are right: "the long lead goes into the hole marked +".
 */
const AT_LENGTH = { injury: 3, damage: 2 };

export function readNote(piece: GuidePiece, fact: NoteFact, language: Language): NoteReading {
  const lexicon = hazardLexicon(language);
  const blocks = piece.prose.filter((block) => block.note === fact);
  const opening = blocks.flatMap((block) => block.words).filter((word) => isIn(word, fact));
  const named = hazardNamed(opening, language);
  const body = blocks.flatMap((block) =>
    block.sentences
      .map(
        (one) =>
          new BlockSentence(
            block,
            one,
            one.words.filter((word) => !isIn(word, fact)),
          ),
      )
      .filter((sentence) => sentence.words.length > 0),
  );
  const words = body.flatMap((sentence) => sentence.words);
  const hazards = new Set([...lexicon.hazardsIn(opening), ...lexicon.hazardsIn(words)]);
  if (named) hazards.add(named);
  const advice = body.filter((sentence) => advises(sentence, lexicon, language));
  const enough = fact.signal === "NOTICE" ? AT_LENGTH.damage : AT_LENGTH.injury;
  return {
    piece,
    fact,
    named,
    hazards,
    hasAvoidance: advice.length > 0 || body.length >= enough,
    hasConsequence: advice.length < body.length || body.some(({ words }) => harms(words, lexicon)),
    says: {
      hurts: lexicon.hurts.has(words),
      kills: lexicon.kills.has(words),
      breaks: lexicon.breaks.has(words),
    },
  };
}

function isIn({ start }: Word, { opening }: NoteFact): boolean {
  return start >= opening.start && start < opening.end;
}

function advises(sentence: BlockSentence, lexicon: HazardLexicon, language: Language): boolean {
  return (
    lexicon.avoids.has(sentence.words) || actLexicon(language).commands(lexicon.commands, sentence)
  );
}

function harms(words: readonly Word[], { hurts, kills, breaks }: HazardLexicon): boolean {
  return hurts.has(words) || kills.has(words) || breaks.has(words);
}
