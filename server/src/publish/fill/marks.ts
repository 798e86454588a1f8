/** How a mark is shown: its items, never the role word. */
import { markItems } from "../../checks/words.ts";
import type { ResolvedItem, ResolvedMark } from "../../model/guide.ts";
import type { GuideState } from "../../model/guideState.ts";
import type { Part } from "../../model/parts.ts";
import type { PieceNode } from "../../model/pieceNode.ts";
import type { Item, PartItem, PartMark } from "../../syntax/dialect.ts";
import type { PageWords } from "../words/form.ts";

/** What a mark comes to for a reader. */
export type ShownMark =
  | { readonly kind: "nothing" }
  /** Bare words that no parts list knows: the brackets are the author's. */
  | { readonly kind: "text"; readonly text: string }
  | {
      readonly kind: "items";
      readonly items: readonly string[];
      readonly stated: string | undefined;
    }
  | { readonly kind: "thing"; readonly text: string }
  | { readonly kind: "see"; readonly text: string; readonly step: string | undefined };

export function shownMark(
  mark: PartMark,
  piece: PieceNode,
  guide: GuideState,
  words: PageWords,
): ShownMark {
  const text = piece.page.text.slice(piece.start + mark.span.start, piece.start + mark.span.end);
  switch (mark.role) {
    case "label":
      return { kind: "nothing" };
    case "see": {
      const name = textOf(mark.items);
      const step = guide.labels(name)[0]?.step?.number;
      return { kind: "see", text: step ?? name, step };
    }
    case "tool":
    case "own":
      return { kind: "thing", text: textOf(mark.items) };
    default: {
      const resolved = piece.marks.find((one) => one.mark.span.start === mark.span.start);
      if (!mark.certain && !resolved) return { kind: "text", text };
      const items = mark.items.flatMap((item, index) => itemTexts(item, resolved, index, words));
      return { kind: "items", items, stated: mark.stated?.text };
    }
  }
}

function textOf(items: readonly Item[]): string {
  return items.map((item) => (item.kind === "text" ? item.text : "")).join(", ");
}

function itemTexts(
  item: Item,
  resolved: ResolvedMark | undefined,
  index: number,
  words: PageWords,
): readonly string[] {
  switch (item.kind) {
    case "part":
      return [named(item)];
    case "range":
      return [`${item.board ? `${item.board}/` : ""}${item.from}–${item.to}`];
    case "set":
      return setItems(resolved?.items[index]) ?? [item.of];
    case "group":
      return [item.members.map(named).join(" + ")];
    case "choice":
      return [item.members.map(named).join(` ${words.or} `)];
    case "amount":
      return [
        `${item.amount.kind === "count" ? item.amount.count : item.amount.text} × ${item.key}`,
      ];
    case "text":
      return [item.text];
  }
}

/** The parts that a set means; without their board, which the stage tells. */
function setItems(resolved: ResolvedItem | undefined): readonly string[] | undefined {
  const parts = resolved?.supplies.filter((supply): supply is Part => supply.kind === "part") ?? [];
  return parts.length > 0 ? markItems(parts.map(({ name }) => ({ name }))) : undefined;
}

function named({ board, name }: PartItem): string {
  return board ? `${board}/${name}` : name;
}
