/** What the preview's panel and the page inside it say to each other. */
import type { PreviewPlace, SentPatch } from "../../../server/src/lsp/protocol.ts";

/** Where the page finds the pictures of a folder. */
export interface PictureRoot {
  readonly from: string;
  readonly to: string;
}

export type ToPage =
  | {
      readonly kind: "patch";
      readonly patch: SentPatch;
      readonly roots: readonly PictureRoot[];
    }
  /** Brings a place to the top; `withMarked` only as far as the block of the cursor stays in view. */
  | { readonly kind: "reveal"; readonly place: PreviewPlace; readonly withMarked: boolean }
  /** Marks the block in which the cursor is. */
  | { readonly kind: "mark"; readonly block: number | undefined };

export type FromPage =
  /** The page has begun anew and shows nothing; `uri` is what it showed before. */
  | { readonly kind: "ready"; readonly uri?: string | undefined }
  /** The source of a block, or of a step in it, is asked for. */
  | { readonly kind: "open"; readonly block: number; readonly step?: string | undefined }
  /** A link of the author's to another file, relative to the page of the block. */
  | { readonly kind: "follow"; readonly block: number; readonly href: string }
  /** The reader has scrolled: the place is at the top now. */
  | { readonly kind: "scrolled"; readonly place: PreviewPlace };

/** What the page keeps over a reload. */
export interface PageState {
  readonly uri?: string;
  readonly y?: number;
}
