/** What a revised parts list touches in a guide, for `kitquill compare --guide`. */
import type { RevisedGuide } from "../features/revision/revision.ts";
import type { GuideState } from "../model/guideState.ts";
import { LineIndex } from "../text/lines.ts";
import { UsageError } from "./arguments.ts";
import { oneGuide } from "./oneGuide.ts";
import type { NamedList } from "./readList.ts";

export interface RevisedInput extends RevisedGuide {
  readonly guide: GuideState;
  /** The file that shows a place, and its lines. */
  fileOf(uri: string): { readonly uri: string; readonly lines: LineIndex | undefined };
}

/**
 * `name`: the guide. The list that the two take the place of is the one of them that the guide names,
 * or else its only one. Throws a UsageError where that does not tell.
 */
export async function reviseNamed(
  name: string,
  before: NamedList,
  after: NamedList,
  cwd: string,
  listsOutside: boolean,
): Promise<RevisedInput> {
  const { checked } = await oneGuide(name, cwd, listsOutside);
  const { service, guide } = checked;
  const list = replacedList(guide, name, before, after);
  const revised = await service.revise(guide, list, before.content, after.content);
  if ("problem" in revised) throw new UsageError(revised.problem);
  const { list: fresh } = after;
  const lines = new LineIndex(fresh.text);
  // The new list need not be in the place yet where the guide looks for it.
  const fileOf = (uri: string) =>
    uri === list ? { uri: fresh.uri, lines } : { uri, lines: service.lines(uri) };
  return { ...revised, guide, fileOf };
}

function replacedList(guide: GuideState, name: string, before: NamedList, after: NamedList) {
  const uris = [...new Set(guide.lists.map(({ uri }) => uri))];
  const own = [after, before].find(({ list }) => uris.includes(list.uri));
  if (own) return own.list.uri;
  if (uris.length === 1) return uris[0]!;
  if (uris.length === 0) {
    throw new UsageError(
      `No parts list that \`${name}\` names can be read. Correct its key \`parts\`.`,
    );
  }
  throw new UsageError(
    `\`${name}\` names ${uris.length} parts lists, and neither of the two is one of them. Name the one that is revised as OLD or NEW.`,
  );
}
