/** Where the cursor stands in the front matter: at a key, at a name below one, or at a value. */

export interface FrontMatterWriting {
  /** Undefined where a key itself is being written. */
  readonly key: string | undefined;
  /** The name below the key whose value is being written: `R1–R4` of `heights`. */
  readonly name: string | undefined;
  /** What has been typed of the key, name or value. */
  readonly typed: string;
  /** Whether a bracket or brace, or lines of their own, hold the entries of the key. */
  readonly isOpened: boolean;
}

const KEY_LINE = /^([A-Za-z][\w-]*)[ \t]*:(?:[ \t]+|$)/;
/** An entry before the cursor ends at a comma, a bracket, or the line. */
const ENTRY_START = /^.*(?:[[{,]|[\r\n][ \t]*(?:- )?)[ \t]*/s;
/** A decimal comma of YAML's flow style (`{ a: 4,5 V }`) is no end; the checker tells of it. */
const NAMED = /^(["']?)([^"':]+)\1[ \t]*:[ \t]+/;

/** `before` is the front matter up to the cursor. */
export function readFrontMatterWriting(before: string): FrontMatterWriting | undefined {
  const lines = before.split(/\r\n|\n|\r/);
  const last = lines.at(-1)!;
  if (lines.length < 2 || /(?:^|\s)#/.test(last)) return undefined;
  if (/^[\w-]*$/.test(last)) {
    return { key: undefined, name: undefined, typed: last, isOpened: true };
  }
  const from = lines.findLastIndex((line) => KEY_LINE.test(line));
  if (from < 0) return undefined;
  const head = KEY_LINE.exec(lines[from]!)!;
  const rest = [lines[from]!.slice(head[0].length), ...lines.slice(from + 1)].join("\n");
  const start = ENTRY_START.exec(rest)?.[0] ?? "";
  const entry = rest.slice(start.length);
  const named = NAMED.exec(entry);
  return {
    key: head[1]!,
    name: named?.[2]?.trim(),
    typed: entry.slice(named?.[0].length ?? 0).replace(/^["']/, ""),
    isOpened: start !== "",
  };
}
