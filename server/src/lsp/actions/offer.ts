/** What an offer of code actions is asked, and what it gives. */
import type { CodeAction, WorkspaceEdit } from "vscode-languageserver";
import type { LineIndex } from "../../text/lines.ts";
import type { Span } from "../../text/span.ts";
import type { FeatureContext } from "../features/feature.ts";

export interface Requested {
  readonly context: FeatureContext;
  readonly uri: string;
  readonly lines: LineIndex;
  /** The selection. */
  readonly span: Span;
}

export type Offered = Omit<CodeAction, "edit" | "kind"> & {
  readonly kind?: string;
  /** Undefined where the text does not allow it. */
  readonly edit:
    | WorkspaceEdit
    /** Work that is left until the author chooses it, where the client can wait for it. */
    | (() => Promise<WorkspaceEdit | undefined>);
};

export type Offer = (requested: Requested) => Iterable<Offered>;
