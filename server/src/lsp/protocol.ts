/**
 * What Kitquill adds to the Language Server Protocol: requests by which a server without a file
 * system of its own asks the client for files, and those by which the client's views are filled.
 * Names and shapes only; client and server share it.
 */

/** `initializationOptions` of a client that does more than the protocol asks. */
export interface ClientOffers {
  /** It answers the requests below. */
  readonly clientFiles: boolean;
  /** Its command that shows completions at the cursor anew. */
  readonly suggestAgain?: string;
  /** Its command that goes to a location, given as `{ uri, range }` of the protocol. */
  readonly goTo?: string;
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
  readonly stages: readonly SentStage[];
  /** Parts to be fitted that no step fits, by board, the lowest first. */
  readonly left: readonly SentPart[];
  readonly listed: number;
  readonly fitted: number;
  readonly errors: number;
  readonly warnings: number;
}
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
export interface SentPart {
  /** As a mark names it. */
  readonly name: string;
  readonly board: string;
  readonly value: string;
  readonly package: string;
  /** Body height in mm. */
  readonly height?: number | undefined;
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
