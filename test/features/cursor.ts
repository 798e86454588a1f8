/** A kit in one string with the author's cursor in it, for tests of what the editor asks. */
import type { GuideState } from "../../server/src/model/guideState.ts";
import type { PartsList } from "../../server/src/model/list/partsList.ts";
import { Service } from "../../server/src/service.ts";
import { applyEdits, type TextEdit } from "../../server/src/text/span.ts";
import { fixture } from "../fixture.ts";
import { MemoryFiles } from "../memoryFiles.ts";

/** Stands for the cursor. */
const CURSOR = "¦";
export const FOLDER = "file:///kit/";

export interface AtCursor {
  readonly service: Service;
  readonly guide: GuideState;
  readonly uri: string;
  /** Where the cursor stands in its file; -1 where the kit has none. */
  readonly offset: number;
  /** The parts list that the cursor is in. */
  readonly list: PartsList | undefined;
  /** Text by file name, without the cursor. */
  readonly files: ReadonlyMap<string, string>;
}

/** Checks the kit (`guide.md` is the guide) as an editor would that has all files open. */
export async function atCursor(kit: string): Promise<AtCursor> {
  const files = new Map<string, string>();
  let [place, offset] = ["guide.md", -1];
  const memory = new MemoryFiles();
  for (const [name, text] of fixture(kit).files) {
    const at = text.indexOf(CURSOR);
    if (at >= 0) [place, offset] = [name, at];
    files.set(name, text.replace(CURSOR, ""));
    memory.set(FOLDER + name, files.get(name)!);
  }
  const service = new Service(memory);
  for (const [name, text] of files) service.open(FOLDER + name, 1, text);
  await service.settle();
  service.takeChanges();
  const guide = service.guidesOf(`${FOLDER}guide.md`)[0]!;
  const uri = FOLDER + place;
  const list = guide?.lists.find((one) => one.uri === uri);
  return { service, guide, uri, offset, list, files };
}

/** The file of the cursor after edits. */
export function edited({ files, uri }: AtCursor, edits: readonly TextEdit[]): string {
  return applyEdits(files.get(uri.slice(FOLDER.length))!, edits);
}
