/**
 * Puts finished drafts in the place of files: all of them, or none, so that no folder holds some files
 * of one edition and some of another. Command line and editor share it, so it knows neither disk nor
 * editor, imports nothing, and each failure can be tried.
 */

/** The mark of a file of ours stands within so many bytes of its beginning. */
export const MARK_WITHIN = 2000;

/** What the names of our files look like: no way up, no drive, no hidden file. */
const SAFE = /^(?:[a-z0-9][A-Za-z0-9-]*\/)?[A-Za-z0-9][A-Za-z0-9.-]*$/;

/** Throws where one of the files has a name that could lead out of the folder that they go to. */
export function refuseUnsafe(files: readonly { readonly name: string }[]): void {
  for (const { name } of files) {
    if (!SAFE.test(name) || name.includes("..")) throw new Error(`\`${name}\` is no name of ours`);
  }
}

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

/**
 * Rejects with the first error, when all is as it was before: a file that a program holds open is
 * replaced by no system that locks it.
 */
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
