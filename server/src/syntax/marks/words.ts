/** The words and signs of part marks. Role words are English in guides of every language. */
import type { Role } from "../dialect.ts";

export const ROLES: ReadonlyMap<string, Role> = new Map<string, Role>(
  (
    [
      "later",
      "place",
      "insert",
      "empty",
      "bridge",
      "make",
      "match",
      "try",
      "remove",
      "tool",
      "own",
      "see",
    ] as const
  ).map((role) => [role, role]),
);

/** Roles whose items are free text. */
export const TEXT_ROLES: ReadonlySet<Role> = new Set<Role>(["tool", "own", "see"]);

/** Words taken for a role that a mark without role word already has. */
export const FIT_WORDS: ReadonlySet<string> = new Set([
  "fit",
  "fits",
  "fitted",
  "mount",
  "solder",
  "install",
]);

/** What may stand between the ends of a range: dashes, dots, and the words of several languages. */
export const RANGE_SIGN =
  /\s*(?:[-\u2010-\u2014\u2212~…]|\.{2,3})\s*|\s+(?:to|through|thru|bis|tot|t\/m|à|a)\s+/giu;

/** Class letters of a designator that is beyond doubt. */
export const CLASS_LETTERS = /^\p{Lu}+$/u;

/** Longest bracket, in characters of the source, that is read as a mark. */
export const MAX_MARK = 2_000;
