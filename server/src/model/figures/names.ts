/** Names of figures: which part a subject means, and when two names are the same. */
import { designatorKey } from "../../syntax/designators.ts";
import type { FigureName } from "../../syntax/dialect.ts";
import type { Kit } from "../kit.ts";
import type { Part } from "../parts.ts";

/** A name as an expression or a figure uses it. */
export interface UsedName {
  readonly symbol: string;
  readonly subjects: readonly { readonly text: string }[];
}

/** The same for two names exactly if they mean the same; `board` holds for bare designators. */
export function nameKey(name: UsedName | FigureName, kit: Kit, board: string | undefined): string {
  if (name.subjects.length === 0) return name.symbol;
  const subjects = name.subjects.map(({ text }) => subjectKey(text, kit, board));
  return `${name.symbol}(${subjects.join(", ")})`;
}

/** The part that a subject names (`R50`, `relay/R50`), if it names one. */
export function partOfSubject(
  text: string,
  kit: Kit,
  stageBoard: string | undefined,
): Part | undefined {
  const slash = text.indexOf("/");
  if (slash < 0) return kit.find(text, undefined, stageBoard).part;
  return kit.find(text.slice(slash + 1).trim(), text.slice(0, slash).trim()).part;
}

function subjectKey(text: string, kit: Kit, board: string | undefined): string {
  const part = partOfSubject(text, kit, board);
  if (part) return `${part.board}/${part.name}`;
  return designatorKey(text).replace(/\s+/g, " ");
}
