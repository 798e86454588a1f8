/** Which files a folder's `.gitignore` files leave out, one layer for each folder that has one. */
import ignore, { type Ignore } from "ignore";

export interface IgnoreLayer {
  /** Path of the folder, from the root of the walk, ending in `/`; empty for the root. */
  readonly folder: string;
  readonly rules: Ignore;
}

export function ignoreLayer(folder: string, gitignore: string): IgnoreLayer {
  return { folder, rules: ignore().add(gitignore) };
}

/**
 * Whether the layers leave the path out; folders end in `/`. Layers are ordered from the outermost,
 * and the innermost that has a rule decides, as gitignore(5) says.
 */
export function isIgnored(path: string, layers: readonly IgnoreLayer[]): boolean {
  for (const { folder, rules } of layers.toReversed()) {
    const { ignored, unignored } = rules.test(path.slice(folder.length));
    if (ignored || unignored) return ignored;
  }
  return false;
}
