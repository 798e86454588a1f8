/** `kitquill check --fix`: applies safe fixes to one guide's files until none is left. */
import { access, constants } from "node:fs/promises";
import { URI } from "vscode-uri";
import { FixSet } from "../checks/fixSet.ts";
import { decodeText } from "../text/decode.ts";
import { applyEdits } from "../text/span.ts";
import type { Files, FolderEntry } from "../workspace/files.ts";
import { type Checked, checkGuide, filesOf } from "./checking.ts";
import { encodeLike } from "./encode.ts";
import { diskFor, type Input } from "./inputs.ts";
import { shownPath } from "./shownPath.ts";
import { replaceFile } from "./write.ts";

export interface FixResult {
  /** Fixes applied. */
  readonly fixed: number;
  readonly problems: readonly string[];
}

/** A fix may bring up the next; no guide in earnest needs as many rounds. */
const MOST_ROUNDS = 100;

/**
 * Applies the guide's safe fixes, in rounds until none is left, and then writes the changed files.
 * Only the guide's own pages and lists are written, in the encoding they have.
 */
export async function fixGuide(
  input: Input,
  listsOutside: boolean,
  cwd: string,
): Promise<FixResult> {
  const draft = new Draft(diskFor(input, listsOutside));
  let fixed = 0;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const checked = await checkGuide(input, draft, listsOutside);
    const applied = checked ? applyRound(checked, draft) : 0;
    if (applied === 0) return { fixed, problems: await draft.write(cwd) };
    fixed += applied;
  }
  const shown = shownPath(input.uri, cwd);
  const problem = `The fixes of \`${shown}\` do not come to an end, so nothing is changed.`;
  return { fixed: 0, problems: [problem] };
}

/** Applies the fixes that do not get in each other's way; how many that were. */
function applyRound(checked: Checked, draft: Draft): number {
  const { diagnoses, guide, service } = checked;
  const own = new Set(filesOf(guide).filter((uri) => !draft.refuses(uri)));
  const fixes = new FixSet();
  for (const diagnosis of diagnoses) {
    const fix = diagnosis.fixes().find(({ safe }) => safe);
    if (fix?.edits.every(({ uri }) => own.has(uri))) fixes.take(fix);
  }
  const texts = [...fixes.edits].map(([uri, list]): [string, string] => [
    uri,
    applyEdits(service.text(uri)!, list),
  ]);
  // A fix may change several files, so all of them are taken or none.
  return draft.take(texts) ? fixes.size : applyRound(checked, draft);
}

/** Files as they will be: changed texts in memory, all others from disk. */
class Draft implements Files {
  readonly #disk: Files;
  readonly #before = new Map<string, Uint8Array>();
  readonly #after = new Map<string, Uint8Array>();
  readonly #refused = new Map<string, string>();

  constructor(disk: Files) {
    this.#disk = disk;
  }

  async read(uri: string): Promise<Uint8Array | undefined> {
    const changed = this.#after.get(uri);
    if (changed) return changed;
    const bytes = await this.#disk.read(uri);
    if (bytes) this.#before.set(uri, bytes);
    return bytes;
  }

  exists(uri: string): Promise<boolean> {
    return this.#disk.exists(uri);
  }

  list(folderUri: string): Promise<readonly FolderEntry[]> {
    return this.#disk.list(folderUri);
  }

  /** Whether the file cannot take a fixed text. */
  refuses(uri: string): boolean {
    return this.#refused.has(uri);
  }

  /** Takes the texts if each can be encoded as its file is; else none, and refuses those files. */
  take(texts: readonly (readonly [uri: string, text: string])[]): boolean {
    const encoded = new Map<string, Uint8Array>();
    let complete = true;
    for (const [uri, text] of texts) {
      const before = this.#before.get(uri)!;
      const decoded = decodeText(before);
      const after = "text" in decoded && encodeLike(text, decoded.encoding, before);
      if (after) {
        encoded.set(uri, after);
      } else {
        this.#refused.set(uri, "its encoding has no place for the fixed text");
        complete = false;
      }
    }
    if (complete) for (const [uri, after] of encoded) this.#after.set(uri, after);
    return complete;
  }

  /** Writes what changed; tells what could not be written. */
  async write(cwd: string): Promise<string[]> {
    for (const [uri, after] of this.#after) {
      const path = URI.parse(uri).fsPath;
      try {
        await access(path, constants.W_OK);
        await replaceFile(path, this.#before.get(uri)!, after);
      } catch (error) {
        this.#refused.set(uri, error instanceof Error ? error.message : String(error));
      }
    }
    return [...this.#refused].map(
      ([uri, why]) => `\`${shownPath(uri, cwd)}\` is not changed: ${why}.`,
    );
  }
}
