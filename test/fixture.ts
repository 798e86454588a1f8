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
import type { Fix, Severity } from "../server/src/checks/check.ts";
import { type Diagnosis, Service } from "../server/src/service.ts";
import { LineIndex } from "../server/src/text/lines.ts";
import { applyEdits } from "../server/src/text/span.ts";
import { MemoryFiles } from "./memoryFiles.ts";

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
function squiggle(
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

/** A finding as a test sees it. */
export interface Found extends Squiggle {
  readonly message: string;
  readonly severity: Severity;
}

export interface Checked {
  readonly found: readonly Found[];
  readonly diagnoses: readonly Diagnosis[];
}

const FOLDER = "file:///kit/";

/** Checks the guide (`guide.md`, or the named file) as the command line would. */
export async function checkFiles(
  files: ReadonlyMap<string, string>,
  guide = "guide.md",
): Promise<Checked> {
  const memory = new MemoryFiles();
  for (const [name, text] of files) memory.set(FOLDER + name, text);
  const service = new Service(memory);
  service.follow(FOLDER + guide);
  await service.settle();
  const diagnoses = service.takeChanges().flatMap((change) => [...change.diagnoses]);
  const found = diagnoses.map((one) => {
    const file = one.uri.slice(FOLDER.length);
    const place = squiggle(file, files.get(file) ?? "", one.span, one.code);
    return { ...place, message: one.message, severity: one.severity };
  });
  return { found: found.sort(byPlace), diagnoses };
}

/** Checks a fixture; `code` leaves out the findings of other checks. */
export async function checkFixture(text: string, code?: string) {
  const { files, expected } = fixture(text);
  const checked = await checkFiles(files);
  const ofCode = (one: Squiggle) => code === undefined || one.code === code;
  return {
    files,
    found: checked.found.filter(ofCode),
    expected: expected.filter(ofCode),
    diagnoses: checked.diagnoses.filter((one) => code === undefined || one.code === code),
  };
}

/** One line a finding, as an assertion shows them best. */
export function show(squiggles: readonly Squiggle[]): string[] {
  return [...squiggles]
    .sort(byPlace)
    .map((one) => `${one.file}:${one.line}:${one.start}-${one.end} ${one.code}`);
}

/** The files after a fix. */
export function applyFix(files: ReadonlyMap<string, string>, fix: Fix): Map<string, string> {
  const after = new Map(files);
  for (const { uri, edits } of fix.edits) {
    const name = uri.slice(FOLDER.length);
    after.set(name, applyEdits(after.get(name)!, edits));
  }
  return after;
}

function byPlace(a: Squiggle, b: Squiggle): number {
  return (
    (a.file < b.file ? -1 : a.file > b.file ? 1 : 0) ||
    a.line - b.line ||
    a.start - b.start ||
    a.end - b.end ||
    (a.code < b.code ? -1 : a.code > b.code ? 1 : 0)
  );
}
