/** What completion offers at a place of a guide. */
import type { Span } from "../../text/span.ts";

/** One thing to choose. */
export interface Completion {
  readonly label: string;
  readonly kind: CompletionKind;
  /** Shown right behind the label: a part's value. */
  readonly detail?: string;
  /** Shown at the far end: package and height. */
  readonly description?: string;
  /** What takes the place of the completed stretch; the label where it is missing. */
  readonly text?: string;
  /** The text is a snippet: `${1:name}` are places to fill in, `$0` the last one. */
  readonly isSnippet?: boolean;
  /** What the typed text is compared with; the label where it is missing. */
  readonly filter?: string;
  /** Choosing it leaves the author where something else is offered. */
  readonly leadsOn?: boolean;
  /** Markdown, made when it is shown. */
  readonly documentation?: () => string | undefined;
}

export type CompletionKind =
  | "part"
  | "hardware"
  | "set"
  | "role"
  | "label"
  | "figure"
  | "function"
  | "unit"
  | "word"
  | "note"
  | "key"
  | "value"
  | "file";

export interface Completions {
  /** What a chosen text takes the place of, on one line around the cursor; counts in the page. */
  readonly span: Span;
  /** In the order in which they are to be shown. */
  readonly items: readonly Completion[];
  /** False where more would come up with more letters typed. */
  readonly complete: boolean;
}

/** No list offers more; what is left out comes up with the next letters. */
export const MOST_ITEMS = 200;
