/**
 * What Kitquill adds to the Language Server Protocol: requests by which a server without a file
 * system of its own asks the client for files, and those by which the client's views are filled.
 * Names and shapes, what a kit is called, and how the files of a publication come into their places;
 * client and server share it.
 */

export * from "../features/start/kitName.ts";
export * from "../publish/replacing.ts";

/** `initializationOptions` of a client that does more than the protocol asks. */
export interface ClientOffers {
  /** It answers the requests below. */
  readonly clientFiles: boolean;
  /** Its command that shows completions at the cursor anew. */
  readonly suggestAgain?: string;
  /** Its command that goes to a location, given as `{ uri, range }` of the protocol. */
  readonly goTo?: string;
  /** Its command that shows the page of a check, given the check's code. */
  readonly explain?: string;
}

/** Server to client: the bytes of one file. */
export const READ_FILE = "kitquill/readFile";
export interface ReadFileParams {
  readonly uri: string;
  /** Larger files are not read; their size is told instead. */
  readonly maxBytes: number;
}
export type ReadFileResult =
  | { readonly kind: "bytes"; readonly base64: string }
  | { readonly kind: "too-large"; readonly size: number }
  | { readonly kind: "missing" }
  | { readonly kind: "unreadable"; readonly message: string };

/** Server to client: what stands at a URI. */
export const STAT = "kitquill/stat";
export interface StatParams {
  readonly uri: string;
}
export type StatResult =
  | { readonly kind: "file" | "folder"; readonly size: number; readonly mtime: number }
  | { readonly kind: "missing" }
  | { readonly kind: "unreadable"; readonly message: string };

/** Server to client: what a folder holds. */
export const LIST_FOLDER = "kitquill/listFolder";
export interface ListFolderParams {
  readonly uri: string;
}
export type ListFolderResult =
  | {
      readonly kind: "entries";
      readonly entries: readonly { readonly name: string; readonly kind: "file" | "folder" }[];
    }
  | { readonly kind: "missing" }
  | { readonly kind: "unreadable"; readonly message: string };

/** Server to client: files of the workspace that match one glob, `{folder}/*.md` say. */
export const FIND_FILES = "kitquill/findFiles";
export interface FindFilesParams {
  readonly glob: string;
  readonly limit: number;
}
export interface FindFilesResult {
  readonly uris: readonly string[];
}

/** A stretch of a file, as the protocol counts. */
export interface SentSpot {
  readonly uri: string;
  readonly range: { readonly start: SentPosition; readonly end: SentPosition };
}
export interface SentPosition {
  readonly line: number;
  readonly character: number;
}
export type SentSeverity = "error" | "warning" | "information" | "hint";

/** Client to server: the guide that a page or parts list belongs to, at a glance. */
export const OVERVIEW = "kitquill/overview";
export interface OverviewParams {
  readonly uri: string;
}
/** Null for a file of no guide. */
export type OverviewResult = SentOverview | null;
export interface SentOverview {
  readonly uri: string;
  readonly title?: string | undefined;
  /** Parts to be fitted that no step fits, by board, the lowest first. */
  readonly left: readonly SentPartGroup[];
  readonly listed: number;
  readonly fitted: number;
  readonly errors: number;
  readonly warnings: number;
}

/** Client to server: the stages and steps of that guide, which only a view that is open needs. */
export const STAGES = "kitquill/stages";
export type StagesResult = readonly SentStage[] | null;
export interface SentStage {
  readonly number: number;
  readonly title?: string | undefined;
  readonly spot: SentSpot;
  readonly fitted: number;
  readonly worst?: SentSeverity | undefined;
  readonly steps: readonly SentStep[];
}
export interface SentStep {
  readonly number: string;
  readonly text: string;
  readonly spot: SentSpot;
  /** Parts that it fits, as the items of a mark. */
  readonly parts: readonly string[];
  readonly worst?: SentSeverity | undefined;
}
export interface SentPartGroup {
  /** Empty where the kit has no boards to tell apart. */
  readonly board: string;
  /** Body height in mm; absent where it is not known, and off the boards. */
  readonly height?: number | undefined;
  readonly offBoard: boolean;
  readonly parts: readonly SentPart[];
  /** The parts as the items of a mark, without their board. */
  readonly items: readonly string[];
}
export interface SentPart {
  readonly name: string;
  readonly value: string;
  readonly package: string;
}

/** Client to server: the marks that the plain text of a guide can be given. */
export const ADOPT = "kitquill/adopt";
export interface AdoptParams {
  /** A page of the guide. */
  readonly uri: string;
}
/** Null for a file of no guide. */
export type AdoptResult = {
  readonly marks: readonly SentMark[];
  /** Which parts stay for the author to mark; empty when none does. */
  readonly left: string;
} | null;
export interface SentMark extends SentSpot {
  /** Replaces the range. */
  readonly text: string;
  /** What shows that the parts are fitted there; the client groups by it. */
  readonly why: string;
}

/** Client to server: the beginning of a guide for a parts list. */
export const START_GUIDE = "kitquill/startGuide";
export interface StartGuideParams {
  readonly list: string;
  /** The file that the guide will be written to; paths in it count from its folder. */
  readonly guide: string;
  readonly title: string;
  readonly language: string;
}
export type StartGuideResult = { readonly text: string } | { readonly problem: string };

/**
 * Client to server: show a guide's preview. The answer tells which guide the file belongs to; its
 * blocks follow as patches, the first of which begins anew.
 */
export const SHOW_PREVIEW = "kitquill/preview/show";
export interface ShowPreviewParams {
  /** A page of the guide, or a parts list of it. */
  readonly uri: string;
}
/** Null for a file of no guide. */
export type ShowPreviewResult = { readonly uri: string } | null;

/** Client to server: nobody looks at the preview. */
export const HIDE_PREVIEW = "kitquill/preview/hide";

/** Server to client: what changes in the preview. */
export const PATCH_PREVIEW = "kitquill/preview/patch";
export interface SentPatch {
  /** The guide. */
  readonly uri: string;
  readonly title: string;
  /** Of the guide, as a tag after BCP 47. */
  readonly language: string;
  /** The blocks shown so far are all to go. */
  readonly isNew: boolean;
  /** To be done in order; each counts in what those before it have left. */
  readonly splices: readonly SentSplice[];
}
export interface SentSplice {
  readonly at: number;
  readonly remove: number;
  readonly add: readonly SentBlock[];
}
export interface SentBlock {
  readonly id: number;
  /** A `section` takes in the blocks behind it that are `inside`; one on `top` ends it. */
  readonly place: "section" | "inside" | "top";
  /** One element, or a few; clean. Pictures have the URIs of their files. */
  readonly html: string;
}

/** Client to server: the block of the preview that shows a place in the text. */
export const FIND_IN_PREVIEW = "kitquill/preview/find";
export interface FindInPreviewParams {
  readonly uri: string;
  readonly line: number;
}
export type FindInPreviewResult = PreviewPlace | null;
export interface PreviewPlace {
  readonly block: number;
  /** How far down the block, from 0 to 1. */
  readonly share: number;
}

/** Client to server: where the source of a block is. */
export const SOURCE_OF_PREVIEW = "kitquill/preview/source";
export interface SourceOfPreviewParams extends PreviewPlace {
  /** A step inside the block, by its number. */
  readonly step?: string | undefined;
}
/** Null for a block that is gone or stands for no place in the text. */
export type SourceOfPreviewResult = SentSpot | null;

/** Client to server: what a revised parts list touches in the guides on it. */
export const REVISE = "kitquill/revise";
export interface ReviseParams {
  /** The list as it is now; where a guide names it, what the server knows of it counts. */
  readonly list: SentFile;
  /** As it was. Where guides name this one alone, it is the guides' own. */
  readonly old: SentFile;
}
export interface SentFile {
  readonly uri: string;
  readonly base64: string;
}
export type ReviseResult = SentRevision | { readonly problem: string };
export interface SentRevision {
  readonly touched: readonly SentTouched[];
  readonly renumbered: readonly SentRenumbering[];
}
export interface SentTouched {
  /** What it is about, in words: a heading. */
  readonly kind: string;
  readonly step?: string | undefined;
  readonly message: string;
  readonly spot: SentSpot;
  /** The text of its step, or of its place: one that has been changed has been seen to. */
  readonly source: string;
  /** Whether a finding stands here, which goes when it is dealt with. */
  readonly isOpen: boolean;
  readonly fixes: readonly { readonly title: string; readonly edits: readonly SentEdit[] }[];
}
export interface SentRenumbering {
  readonly from: string;
  readonly to: string;
  readonly board: string;
}
export interface SentEdit extends SentSpot {
  readonly text: string;
  /** Of the text that the edit is for, where an editor has it open. */
  readonly version?: number | undefined;
}

/** Client to server: edits that carry renumbered designators through the guides on the list. */
export const RENUMBER = "kitquill/renumber";
export interface RenumberParams extends ReviseParams {
  readonly pairs: readonly SentRenumbering[];
}
export type RenumberResult = { readonly edits: readonly SentEdit[] } | { readonly problem: string };

/** Client to server: what can be published of the guide that a page or parts list belongs to. */
export const PUBLISHABLE = "kitquill/publishable";
export interface PublishableParams {
  readonly uri: string;
}
/** Null for a file of no guide. */
export type PublishableResult = SentPublishable | null;
export interface SentPublishable {
  /** URI of the guide's first page. */
  readonly guide: string;
  readonly errors: number;
  readonly outputs: readonly { readonly name: string; readonly summary: string }[];
}

/**
 * Client to server: the files of a publication, which the client writes. The token may be cancelled;
 * `workDoneToken` gets reports of the protocol's work-done progress.
 */
export const PUBLISH = "kitquill/publish";
export interface PublishParams {
  readonly guide: string;
  readonly outputs: readonly string[];
  readonly picturesBeside: boolean;
  /** Of a narration; absent for the usual rate. */
  readonly wordsPerMinute?: number | undefined;
  readonly workDoneToken?: string | undefined;
}
/** Null for a guide that is not known any more. */
export type PublishResult = SentPublication | null;
export interface SentPublication {
  readonly files: readonly SentOutput[];
  /** What is wrong with what the files say; they should not be written unless the user insists. */
  readonly faults: readonly string[];
  /** What readers will miss, a sentence each. */
  readonly warnings: readonly string[];
  /** URIs of the files that the guide is made from: none of them may be replaced. */
  readonly sources: readonly string[];
}
export interface SentOutput {
  /** Relative to the folder, with `/`. */
  readonly name: string;
  readonly content: { readonly text: string } | { readonly base64: string };
  /** What a file holds at its beginning that may be replaced; absent for one named after its content. */
  readonly mark?: string | undefined;
  /** What its beginning holds of the guide's title, so that another guide's file is told apart. */
  readonly titleMark?: string | undefined;
}
