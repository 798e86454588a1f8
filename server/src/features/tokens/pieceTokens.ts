/**
 * The tokens of one piece: marks by role, parts named in the prose, figures, signal words. They hang on
 * the piece and the parts list alone, so that they need not be made anew when the text elsewhere
 * changes.
 */
import { partOfSubject } from "../../model/figures/names.ts";
import type { GuideState } from "../../model/guideState.ts";
import type { PieceNode } from "../../model/pieceNode.ts";
import type { Item, PartMark, Role } from "../../syntax/dialect.ts";
import type { NoteFact } from "../../syntax/facts.ts";
import type { Span } from "../../text/span.ts";
import { namingsIn, partsNamed } from "../naming/namings.ts";
import type { Token, TokenModifier } from "./token.ts";

/** What becomes of the parts: in place for good, made ready, on the way, or left out. */
const BY_ROLE: Readonly<Partial<Record<Role, TokenModifier>>> = {
  fit: "definition",
  insert: "definition",
  bridge: "definition",
  make: "declaration",
  match: "declaration",
  later: "modification",
  place: "modification",
  try: "modification",
  remove: "deprecated",
  empty: "deprecated",
};

/** In order, without overlap. */
export function tokensOf(piece: PieceNode, guide: GuideState): readonly Token[] {
  const tokens: Token[] = [];
  const known = new Set(piece.marks.map(({ mark }) => mark));
  for (const fact of piece.facts.facts) {
    if (fact.kind === "mark" && (known.has(fact.mark) || fact.mark.role === "label")) {
      tokens.push(...ofMark(fact.mark));
    } else if (fact.kind === "note") tokens.push(...ofNote(fact));
  }
  for (const naming of namingsIn(piece)) {
    if (naming.mark || partsNamed(naming, guide.kit).length === 0) continue;
    tokens.push({ span: naming.span, type: "variable", modifier: "readonly" });
  }
  tokens.push(...ofFigures(piece, guide));
  return inOrder(tokens);
}

function* ofMark({ role, roleSpan, items, stated }: PartMark): Iterable<Token> {
  if (roleSpan) yield { span: roleSpan, type: "keyword" };
  for (const item of items) yield* ofItem(item, role);
  if (stated) yield { span: stated.span, type: "number" };
}

function* ofItem(item: Item, role: Role): Iterable<Token> {
  const modifier = BY_ROLE[role];
  const part = { type: "variable" as const, ...(modifier && { modifier }) };
  switch (item.kind) {
    case "part":
    case "range":
      yield { span: item.span, ...part };
      return;
    case "group":
    case "choice":
      for (const { span } of item.members) yield { span, ...part };
      return;
    case "set": {
      const end = item.except[0]?.span.start ?? item.span.end;
      yield { span: { start: item.span.start, end }, type: "type" };
      for (const { span } of item.except) yield { span, type: "variable", modifier: "readonly" };
      return;
    }
    case "amount":
      yield { span: { start: item.span.start, end: item.keySpan.start }, type: "number" };
      yield { span: item.keySpan, ...part };
      return;
    case "text":
      yield textToken(item.span, role);
  }
}

function textToken(span: Span, role: Role): Token {
  if (role === "label") return { span, type: "property", modifier: "declaration" };
  return { span, type: role === "see" ? "property" : "string" };
}

function* ofNote({ signal, word }: NoteFact): Iterable<Token> {
  if (!word) return;
  const type = signal === "DANGER" || signal === "WARNING" ? "macro" : "keyword";
  yield { span: word.span, type, modifier: "documentation" };
}

function* ofFigures(piece: PieceNode, guide: GuideState): Iterable<Token> {
  for (const figure of guide.figures.ofPiece(piece)) {
    const { name, stated } = figure.figure;
    if (name) yield { span: name.span, type: "property", modifier: "declaration" };
    for (const { part, use } of figure.formula?.names ?? []) {
      const isPart = partOfSubject(use.symbol, guide.kit, figure.board) !== undefined;
      const { span } = figure.at(part, use.span);
      yield { span, type: isPart ? "variable" : "property", modifier: "readonly" };
    }
    if (stated) yield { span: stated.span, type: "number" };
  }
}

/** Of two that overlap the first stays: a call's name and its value can be one stretch. */
function inOrder(tokens: readonly Token[]): Token[] {
  const sorted = [...tokens].sort((a, b) => a.span.start - b.span.start || b.span.end - a.span.end);
  const kept: Token[] = [];
  let end = 0;
  for (const token of sorted) {
    if (token.span.start < end || token.span.end <= token.span.start) continue;
    kept.push(token);
    end = token.span.end;
  }
  return kept;
}
