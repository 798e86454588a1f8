/**
 * Puts finished drafts in the place of files: all of them, or none, so that no folder holds some files
 * of one edition and some of another. Knows no editor, so that each failure can be tried.
 */

/** What a file system must be able to do; `Place` is how it names a file. */
export interface Replacing<Place> {
  /** Copies a file aside; false where there is none. */
  keep(file: Place, aside: Place): Promise<boolean>;
  /** Moves a file, over one that is there. */
  replace(from: Place, to: Place): Promise<void>;
  remove(file: Place): Promise<void>;
}

export interface Replacement<Place> {
  readonly draft: Place;
  readonly target: Place;
  /** Where the file that is there is kept meanwhile. */
  readonly aside: Place;
}

/** Rejects with the first error, when all is as it was before. */
export async function replaceAll<Place>(
  replacements: readonly Replacement<Place>[],
  files: Replacing<Place>,
): Promise<void> {
  const undo: (() => Promise<void>)[] = [];
  try {
    for (const { draft, target, aside } of replacements) {
      const isThere = await files.keep(target, aside);
      await files.replace(draft, target);
      undo.push(() => (isThere ? files.replace(aside, target) : files.remove(target)));
    }
  } catch (error) {
    for (const one of undo.reverse()) await one();
    throw error;
  }
}
