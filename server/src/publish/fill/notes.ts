/** The head of a hazard note: its sign, the signal word on its colour, and the hazard's name. */
import { readNote } from "../../checks/hazards/note.ts";
import type { GuidePiece } from "../../model/guide.ts";
import { readWords } from "../../model/wordReader.ts";
import type { NoteFact } from "../../syntax/facts.ts";
import { signalWord } from "../../syntax/signalWords.ts";
import type { Language } from "../../text/language.ts";
import { type Hazard, signOf } from "../../trade/hazards/hazards.ts";
import { hazardName, hazardNamed } from "../../trade/hazards/lexicon.ts";
import { type SignCode, signSvg } from "../../trade/signs/signs.ts";
import { escapeHtml } from "../html.ts";
import type { NoteHead } from "../piece/holes.ts";

/**
 * After ANSI Z535.6 and ISO 3864-2: the signal word on its colour, a sign with injury hazards, none
 * with NOTICE.
 */
export function noteHead(head: NoteHead, piece: GuidePiece, language: Language): string {
  const hazard = hazardOf(head, piece, language);
  const sign = head.signal === "NOTICE" ? "" : signFor(signOf(hazard, head.signal), language);
  const word = head.word ?? signalWord(head.signal, language);
  const name = head.hazard || (hazard ? hazardName(hazard, language) : "");
  const title = name ? ` <span class="hazard">${escapeHtml(name)}</span>` : "";
  return `<div class="sign">${sign}</div><p class="signal"><strong>${escapeHtml(word)}</strong>${title}</p>`;
}

/** The standard's words for its signs are at hand in English alone. */
function signFor(code: SignCode, language: Language): string {
  return signSvg(code, { size: 44, ...(language !== "en" && { label: `ISO 7010-${code}` }) });
}

/** What the head names; of an alert, what its text speaks of. */
function hazardOf(head: NoteHead, piece: GuidePiece, language: Language): Hazard | undefined {
  if (head.hazard) return hazardNamed(readWords(head.hazard, 0), language);
  const isThis = (fact: { kind: string }): fact is NoteFact =>
    fact.kind === "note" && (fact as NoteFact).span.start === head.start;
  const fact = piece.facts.facts.find(isThis);
  return fact && [...readNote(piece, fact, language).hazards][0];
}
