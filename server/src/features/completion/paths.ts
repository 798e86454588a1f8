/** Completion of the paths that the front matter names: parts lists and further pages. */
import type { GuideState } from "../../model/guideState.ts";
import { quoteYaml } from "../../syntax/yaml/tree.ts";
import type { Span } from "../../text/span.ts";
import type { Completions } from "./completion.ts";
import { readFrontMatterWriting } from "./frontMatterWriting.ts";

/** A place where the path of a file is written. */
export interface PathPlace {
  /** What of the path stands there already. */
  readonly span: Span;
  /** Ends of the names of the files that may be meant, without the dot. */
  readonly endings: readonly string[];
  /** A list of pages needs brackets, which are not there yet. */
  readonly brackets: boolean;
  readonly quoted: boolean;
}

const MARKDOWN = ["md", "markdown"];
const LISTS = ["csv", "tsv", "xlsx", "xlsm", "ods"];

/** Undefined where no path may stand. */
export function pathPlaceAt(guide: GuideState, uri: string, offset: number): PathPlace | undefined {
  const first = guide.pages[0]!;
  if (uri !== first.uri || offset >= guide.frontMatter.span.end) return undefined;
  const before = first.text.slice(0, offset);
  const writing = readFrontMatterWriting(before);
  const isPages = writing?.key === "pages";
  if (!writing || (!isPages && writing.key !== "parts")) return undefined;
  const start = offset - writing.typed.length;
  const rest = /^[^\s,\]}"']*/.exec(first.text.slice(offset, offset + 200))![0];
  return {
    span: { start, end: offset + rest.length },
    endings: isPages ? MARKDOWN : LISTS,
    brackets: isPages && !writing.isOpened,
    quoted: /["']$/.test(before.slice(0, start)),
  };
}

/** The paths, counted from the page's folder, as they are written there; the nearest first. */
export function completePaths(place: PathPlace, paths: readonly string[]): Completions {
  const sorted = [...paths].sort((a, b) => depth(a) - depth(b) || (a < b ? -1 : 1));
  const written = (path: string) => {
    if (place.quoted) return path;
    const plain = /^[\p{L}\p{N}._/][\p{L}\p{N}._/ ()+-]*$/u.test(path) ? path : quoteYaml(path);
    return place.brackets ? `[${plain}]` : plain;
  };
  return {
    span: place.span,
    items: sorted.map((path) => ({ label: path, kind: "file", text: written(path) })),
    complete: false,
  };
}

function depth(path: string): number {
  return path.split("/").length;
}
