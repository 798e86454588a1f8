/** What an author may have done to the text at a place, beyond the fixes of findings. */
import type { Fix } from "../../checks/check.ts";
import type { Span } from "../../text/span.ts";

export interface Action {
  readonly title: string;
  /** `move` and `rewrite` change what is right as it is; `allow` answers a finding. */
  readonly kind: "move" | "rewrite" | "allow";
  readonly edits: Fix["edits"];
  /** Where the author goes on writing, in the text after the edits. */
  readonly goOn?: { readonly uri: string; readonly offset: number };
}

/** A selection in a page. */
export interface Selection extends Span {
  readonly uri: string;
}
