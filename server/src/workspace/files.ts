/** How the analysis reaches files: on disk, through an editor, or from memory in tests. */
export interface Files {
  /** The bytes, or undefined when there is no such file. Rejects when it exists but cannot be read. */
  read(uri: string): Promise<Uint8Array | undefined>;
}
