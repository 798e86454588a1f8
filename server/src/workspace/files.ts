/** How the analysis reaches files: on disk, through an editor, or from memory in tests. */
export interface Files {
  /** The bytes, or undefined when there is no such file. Rejects when it exists but cannot be read. */
  read(uri: string): Promise<Uint8Array | undefined>;
  /** Whether there is a file, one that may not be read included. */
  exists(uri: string): Promise<boolean>;
  /** What the folder holds, sorted by name; links are left out. Rejects when it cannot be read. */
  list(folderUri: string): Promise<readonly FolderEntry[]>;
}

export interface FolderEntry {
  readonly name: string;
  readonly uri: string;
  readonly kind: "file" | "folder";
}

/** Larger files are not read: no guide or parts list comes near, and memory stays bounded. */
export const MAX_FILE_BYTES = 20 * 1024 * 1024;

export type FileErrorKind = "folder" | "no-file" | "denied" | "too-large" | "outside" | "broken";

/** Why a file that exists is not read; the message is for the author. */
export class FileError extends Error {
  readonly kind: FileErrorKind;

  constructor(kind: FileErrorKind, message: string) {
    super(message);
    this.name = "FileError";
    this.kind = kind;
  }
}
