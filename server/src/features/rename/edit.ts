/** The edits of a rename, for the editor to show by what they stand in. */
import type { Span } from "../../text/span.ts";

export interface RenameEdit {
  readonly uri: string;
  readonly span: Span;
  readonly text: string;
  readonly kind: "mark" | "prose" | "figure" | "front matter" | "list";
}

/** A part that is to be called otherwise; both names without board. */
export interface NewName {
  readonly from: string;
  readonly to: string;
}

/** What a designator that means the renamed part becomes: `U3A`, a section of U3, stays one. */
export function renamed(name: string, { from, to }: NewName): string {
  return to + name.slice(from.length);
}
