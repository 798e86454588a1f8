/**
 * Fixtures for tests of checks: several files in one string, with the expected findings drawn
 * under the text they stand on.
 *
 *     --- file: guide.md
 *     1. Solder [R1, R9].
 *                    ^^ unknown-part: R2
 *     --- file: parts.csv
 *     Designator,Value
 *     R1,10k
 *
 * A line of spaces and carets names a code, and after a colon what the message must contain. It
 * speaks of the nearest line above that is none itself, and is taken out before the files are read.
 * Without a separator line the whole string is `guide.md`.
 */
import { LineIndex } from "../server/src/text/lines.ts";

export interface Squiggle {
  readonly file: string;
  /** One-based, counted without annotation lines. */
  readonly line: number;
  /** Zero-based UTF-16 columns. */
  readonly start: number;
  readonly end: number;
  readonly code: string;
}

export interface Expected extends Squiggle {
  /** What the message must contain; empty when anything will do. */
  readonly says: string;
}

export interface Fixture {
  /** Text by file name, annotations taken out. */
  readonly files: ReadonlyMap<string, string>;
  readonly expected: readonly Expected[];
}

const SEPARATOR = /^--- file: (\S+)$/;
const ANNOTATION = /^( *)(\^+) ([a-z]+(?:-[a-z]+)*)(?:: (.*))?$/;

/** Splits the string into files and expectations. */
export function fixture(text: string): Fixture {
  const files = new Map<string, string>();
  const expected: Expected[] = [];
  let file = "guide.md";
  let lines: string[] = [];
  const finish = (end: "" | "\n") => {
    if (lines.length > 0) files.set(file, lines.join("\n") + end);
    lines = [];
  };
  for (const line of text.split("\n")) {
    const separator = SEPARATOR.exec(line);
    const note = ANNOTATION.exec(line);
    if (separator) {
      finish("\n");
      file = separator[1]!;
    } else if (note) {
      const [, indent, carets, code, says] = note;
      const start = indent!.length;
      const end = start + carets!.length;
      expected.push({ file, line: lines.length, start, end, code: code!, says: says ?? "" });
    } else {
      lines.push(line);
    }
  }
  finish("");
  return { files, expected };
}

/** Where a span stands in its file; one that runs over several lines is cut at its first. */
export function squiggle(
  file: string,
  text: string,
  span: { readonly start: number; readonly end: number },
  code: string,
): Squiggle {
  const lines = new LineIndex(text);
  const { start, end } = lines.range(span);
  const lineEnd = text.slice(lines.lineStart(start.line)).split(/\r?\n/, 1)[0]!.length;
  return {
    file,
    line: start.line + 1,
    start: start.column,
    end: end.line === start.line ? end.column : lineEnd,
    code,
  };
}
