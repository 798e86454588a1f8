/**
 * What Kitquill adds to the Language Server Protocol: requests by which a server without a file
 * system of its own asks the client for files. Names and shapes only; client and server share it.
 */

/** `initializationOptions` of a client that answers the requests below. */
export interface ClientOffers {
  readonly clientFiles: boolean;
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
