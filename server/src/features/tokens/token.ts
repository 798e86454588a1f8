/** Coloured stretches of a page, in the words that editors' themes know. */
import type { Span } from "../../text/span.ts";

/** Token types of the protocol that are used, in the order in which they are sent. */
export const TOKEN_TYPES = [
  "keyword",
  "variable",
  "type",
  "number",
  "string",
  "property",
  "macro",
] as const;
export type TokenType = (typeof TOKEN_TYPES)[number];

/** Modifiers of the protocol that are used. */
export const TOKEN_MODIFIERS = [
  "definition",
  "declaration",
  "modification",
  "deprecated",
  "readonly",
  "documentation",
] as const;
export type TokenModifier = (typeof TOKEN_MODIFIERS)[number];

/** Spans count in the piece. */
export interface Token {
  readonly span: Span;
  readonly type: TokenType;
  readonly modifier?: TokenModifier;
}
