/** Makes a plain Markdown guide one whose parts are marked: what to mark, and what is left to the author. */
import { markItems } from "../../checks/words.ts";
import { accountsFor } from "../../model/accounting.ts";
import type { GuidePiece } from "../../model/guide.ts";
import type { GuideState } from "../../model/guideState.ts";
import type { Part } from "../../model/parts.ts";
import type { Span, TextEdit } from "../../text/span.ts";
import { shift } from "../../text/span.ts";
import {
  type Candidate,
  type Candidates,
  FORMS,
  type Form,
  findCandidates,
  isWithin,
  type Scope,
  type SetCandidate,
} from "./candidates.ts";
import type { Run } from "./runs.ts";
import { AdoptLexicon } from "./words.ts";

/** One mark that would be made. */
export interface Proposal {
  readonly uri: string;
  /** What it stands round, or where it is put in; offsets in the page. */
  readonly span: Span;
  readonly mark: string;
  readonly form: Form | "all of a kind";
  readonly parts: readonly Part[];
  /** Put in, and still to be soldered by a mark of its own. */
  readonly isPlaced?: boolean;
  readonly edits: readonly TextEdit[];
}

/** A part that the author must mark, and where the guide names it, if it does. */
export interface Left {
  readonly part: Part;
  /** A mark would be made that places it; the one that solders it is wanting. */
  readonly isPlaced: boolean;
  readonly named: { readonly uri: string; readonly span: Span } | undefined;
}

export interface Adoption {
  /** In document order. */
  readonly proposals: readonly Proposal[];
  /** In the order of the lists. */
  readonly left: readonly Left[];
}

/**
 * What to mark in a guide whose language has word lists; parts marked already stay as they are. With a
 * scope only what stands in it is marked, and only parts named in it are left.
 */
export function adopt(guide: GuideState, scope?: Scope): Adoption {
  const lexicon = new AdoptLexicon(guide.language ?? "en");
  const found = findCandidates(guide, lexicon, scope);
  const taken = new Taken(guide);
  const runs = takeRuns(found, taken, guide);
  const sets = found.sets.flatMap((one) => takeSet(one, taken));
  const proposals = [...runs, ...sets].sort((a, b) => inDocument(a, b, guide));
  const mentions = firstMentions(guide, scope);
  const meant = scope ? [...mentions.keys()] : guide.parts;
  const left = meant.filter((part) => part.fitted && !part.optional && !taken.has(part));
  const placed = new Set(proposals.filter((one) => one.isPlaced).flatMap((one) => one.parts));
  const tell = (part: Part) => ({
    part,
    isPlaced: placed.has(part),
    named: mentions.get(part),
  });
  return { proposals, left: left.map(tell) };
}

/** A place in the document: of pieces in their order, and in a piece by offset. */
interface Place {
  readonly piece: GuidePiece;
  readonly at: number;
}

/** Which parts are marked by now, each once, and where they are settled. */
class Taken {
  readonly #guide: GuideState;
  readonly #added = new Map<Part, Place>();

  constructor(guide: GuideState) {
    this.#guide = guide;
  }

  has(part: Part): boolean {
    return this.#added.has(part) || this.#guide.uses(part).length > 0;
  }

  take(parts: readonly Part[], place: Place): void {
    for (const part of parts) this.#added.set(part, place);
  }

  /** Whether a mark before the place settles the part, so that `rest of` leaves it out there. */
  isSettledBefore(part: Part, { piece, at }: Place): boolean {
    const added = this.#added.get(part);
    const uses = this.#guide.uses(part).filter(accountsFor);
    const places = added
      ? [added]
      : uses.map((use) => ({ piece: use.step.piece, at: use.span.start }));
    return places.some((one) =>
      one.piece === piece ? one.at < at : one.piece.order < piece.order,
    );
  }
}

/** The surest form first; among equals the first in the document. */
function takeRuns({ runs }: Candidates, taken: Taken, guide: GuideState): Proposal[] {
  const headed = sectionsOfHeadings(runs);
  const ordered = runs
    .map((candidate, index) => ({ candidate, index, rank: rankOf(candidate, headed) }))
    .sort((a, b) => a.rank - b.rank || a.index - b.index);
  // What is placed is still to be soldered further on, by a mark of its own; a socket takes its chip.
  const placed = new Taken(guide);
  const socketed = new Taken(guide);
  return ordered.flatMap(({ candidate }) => {
    const own = candidate.isSocket ? socketed : candidate.isPlaced ? placed : taken;
    return takeRun(candidate, own, socketed, guide);
  });
}

/** The section that each part is the subject of, by its heading. */
function sectionsOfHeadings(runs: readonly Candidate[]): ReadonlyMap<Part, number> {
  const sections = new Map<Part, number>();
  for (const { inHeading, run, section } of runs) {
    if (!inHeading) continue;
    for (const { parts } of run.items) {
      for (const part of parts) if (!sections.has(part)) sections.set(part, section);
    }
  }
  return sections;
}

/** A list under another heading than the parts' own tells more likely what becomes of them there. */
function rankOf(candidate: Candidate, headed: ReadonlyMap<Part, number>): number {
  const { form, isSocket, section, run, inHeading } = candidate;
  if (isSocket) return -1;
  const isList = form === "begins the step" && !inHeading;
  const ownSection = headed.get(run.items[0]!.parts[0]!) ?? section;
  if (isList && ownSection < section) return FORMS.indexOf("names the kind") + 0.5;
  return FORMS.indexOf(form);
}

/** A mark for each stretch of items that nothing else has marked. */
function takeRun(
  { piece, form, run, isPlaced, isSocket }: Candidate,
  taken: Taken,
  socketed: Taken,
  guide: GuideState,
): Proposal[] {
  const proposals: Proposal[] = [];
  for (const items of freeStretches(run, piece, taken)) {
    const parts = items.flatMap((item) => item.parts);
    const span = { start: items[0]!.span.start, end: items.at(-1)!.span.end };
    const here = shift(span, piece.start);
    const text = piece.page.text.slice(here.start, here.end);
    // A chip that has a socket is pushed into it, whatever the guide's verb.
    const hasSocket = (part: Part) => guide.socketOf(part) !== undefined || socketed.has(part);
    const isInserted = !isSocket && parts.every(hasSocket);
    const role = isInserted ? "insert: " : isPlaced ? "place: " : "";
    proposals.push({
      uri: piece.page.uri,
      span: here,
      mark: `[${role}${text}]`,
      form,
      parts,
      isPlaced: role === "place: ",
      edits: [
        { span: { start: here.start, end: here.start }, text: `[${role}` },
        { span: { start: here.end, end: here.end }, text: "]" },
      ],
    });
  }
  return proposals;
}

function freeStretches({ items }: Run, piece: GuidePiece, taken: Taken): Run["items"][] {
  const stretches: Run["items"][number][][] = [[]];
  for (const item of items) {
    const open = stretches.at(-1)!;
    const begins = open.length > 0 || item === items[0] || isWhole(item);
    if (!begins || item.parts.some((part) => taken.has(part))) {
      stretches.push([]);
      continue;
    }
    open.push(item);
    taken.take(item.parts, { piece, at: item.span.start });
  }
  return stretches.filter((stretch) => stretch.length > 0);
}

/** A number without its letters cannot begin a mark. */
function isWhole({ span, parts }: Run["items"][number]): boolean {
  return span.end - span.start >= parts[0]!.name.length;
}

function takeSet({ piece, set }: SetCandidate, taken: Taken): Proposal[] {
  const free = set.parts.filter((part) => !taken.has(part));
  if (free.length === 0) return [];
  const place = { piece, at: set.end };
  const others = set.parts.filter((part) => taken.has(part));
  // What is marked only further on would be taken here as well.
  const later = others.filter((part) => !taken.isSettledBefore(part, place));
  taken.take(free, place);
  const which = others.length > 0 || set.which === "rest" ? "rest of" : "all";
  const excepted = [
    ...(set.except ? [textOf(piece, set.except.span)] : []),
    ...markItems(later.map(({ name }) => ({ name }))),
  ];
  const except = excepted.length > 0 ? ` except ${excepted.join(", ")}` : "";
  const mark = `[${which} ${set.letters}${except}]`;
  const at = piece.start + set.end;
  return [
    {
      uri: piece.page.uri,
      span: { start: at, end: at },
      mark,
      form: "all of a kind",
      parts: free,
      edits: [{ span: { start: at, end: at }, text: ` ${mark}` }],
    },
  ];
}

function textOf(piece: GuidePiece, span: Span): string {
  return piece.page.text.slice(piece.start + span.start, piece.start + span.end);
}

function inDocument(a: Proposal, b: Proposal, guide: GuideState): number {
  const order = (uri: string) => guide.pages.findIndex((page) => page.uri === uri);
  return order(a.uri) - order(b.uri) || a.span.start - b.span.start;
}

/** Where the guide's text, or the scope's, names each part first. */
function firstMentions(
  guide: GuideState,
  scope: Scope | undefined,
): ReadonlyMap<Part, { uri: string; span: Span }> {
  const found = new Map<Part, { uri: string; span: Span }>();
  for (const piece of guide.pieces) {
    if (!isWithin(piece, scope)) continue;
    for (const fact of piece.facts.facts) {
      if (fact.kind !== "mention") continue;
      const at = piece.start + fact.span.start;
      if (scope && (at < scope.start || at >= scope.end)) continue;
      const { part } = guide.kit.find(fact.name, undefined, piece.boardBefore);
      if (part && !found.has(part)) {
        found.set(part, { uri: piece.page.uri, span: shift(fact.span, piece.start) });
      }
    }
  }
  return found;
}
