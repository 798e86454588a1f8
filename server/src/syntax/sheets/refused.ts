/** Why a file of tables is not read, as a sentence for the author; thrown only within this folder. */
export class Refused extends Error {
  /** Offset in a text at which reading failed. */
  readonly at: number | undefined;

  constructor(message: string, at?: number) {
    super(message);
    this.name = "Refused";
    this.at = at;
  }
}

export const DAMAGED =
  "The file is damaged or cut off, so nothing in it can be read. Save it again, and let it be copied to its end.";
