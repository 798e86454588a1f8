/** Marks and figures in one short line, for comparison in tests. */
import type { Item, PartMark } from "../../server/src/syntax/dialect.ts";

/** Role, items and value; a question mark before what the parts list decides. */
export function shortMark({ role, items, stated, certain }: PartMark): string {
  const value = stated ? ` = ${stated.text}` : "";
  return `${certain ? "" : "?"}${role} ${items.map(shortItem).join(" | ")}${value}`;
}

function shortItem(item: Item): string {
  const board = "board" in item && item.board !== undefined ? `${item.board}/` : "";
  switch (item.kind) {
    case "part":
      return board + item.name;
    case "range":
      return `${board}${item.from}..${item.to}(${item.names.length})`;
    case "set": {
      const except = item.except.map(shortItem).join(" ");
      return `${board}${item.which} ${item.of}${except && ` but ${except}`}`;
    }
    case "group":
      return item.members.map(shortItem).join("+");
    case "choice":
      return item.members.map(shortItem).join(" or ");
    case "amount":
      return `${item.amount.kind === "count" ? item.amount.count : `${item.amount.metres} m`} of ${item.key}`;
    case "text":
      return item.text;
  }
}
