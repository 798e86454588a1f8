/** Names in the front matter that stand for nothing: parts, packages, boards, columns, checks. */
import type { Guide } from "../../model/guide.ts";
import { HardwareKeys } from "../../model/hardwareKeys.ts";
import { namesOf } from "../../model/heightNotes.ts";
import { MEANINGS, type PartsList } from "../../model/list/partsList.ts";
import type { FrontMatterProblem } from "../../syntax/frontMatter.ts";
import { nearestWord } from "../../text/nearest.ts";
import type { Span } from "../../text/span.ts";
import { CODES, LIMITED } from "../codes.ts";
import { listsAreRead } from "../places.ts";

/** Problems at the names; those that a parts list decides are left out while one cannot be read. */
export function danglingNames(guide: Guide): FrontMatterProblem[] {
  const problems = [...codes(guide), ...meanings(guide)];
  if (!listsAreRead(guide)) return problems;
  return [
    ...problems,
    ...headers(guide),
    ...heights(guide),
    ...offBoard(guide),
    ...spares(guide),
    ...boards(guide),
  ];
}

function* codes({ frontMatter }: Guide): Iterable<FrontMatterProblem> {
  for (const { name, nameSpan } of frontMatter.checks) {
    if (CODES.includes(name)) continue;
    yield unknown(nameSpan, `No check is called "${name}", so this sets nothing.`, name, CODES);
  }
  for (const { name, nameSpan, span } of frontMatter.limits) {
    if (LIMITED.includes(name)) continue;
    if (!CODES.includes(name)) {
      yield unknown(nameSpan, `No check is called "${name}", so this sets nothing.`, name, CODES);
      continue;
    }
    const message = `${name} has no limit. Write off, hint, info, warning or error; numbers are for ${LIMITED.join(", ")}.`;
    yield { span, message };
  }
}

function* meanings({ frontMatter }: Guide): Iterable<FrontMatterProblem> {
  for (const { name, nameSpan } of frontMatter.columns) {
    if ((MEANINGS as readonly string[]).includes(name)) continue;
    const what = `"${name}" is not what a column can mean, which is one of: ${MEANINGS.join(", ")}.`;
    yield unknown(nameSpan, what, name, MEANINGS);
  }
}

/** A column name counts if any of the lists has it. */
function* headers({ frontMatter, lists }: Guide): Iterable<FrontMatterProblem> {
  for (const { name, value, span } of frontMatter.columns) {
    const found = lists.map((list) =>
      list.overrideProblems.find((one) => one.meaning === name && one.name === value),
    );
    if (found.length === 0 || found.includes(undefined)) continue;
    const known = [...new Set(found.flatMap((one) => one?.candidates ?? []))];
    const has = known.length > 0 ? ` It has: ${known.slice(0, 20).join(", ")}.` : "";
    yield unknown(span, `No column of the parts list is headed "${value}".${has}`, value, known);
  }
}

function* heights(guide: Guide): Iterable<FrontMatterProblem> {
  for (const { name, nameSpan } of guide.frontMatter.heights) {
    if (isPart(name, guide)) continue;
    const isPackage = (text: string) => text.startsWith(fold(name));
    if (guide.lists.some((list) => packagesOf(list).some(isPackage))) continue;
    const what = `The parts list has no part or package "${name}", so this height is used nowhere.`;
    yield unknown(nameSpan, what, name, []);
  }
}

const PACKAGES = new WeakMap<PartsList, readonly string[]>();

/** The packages that a list names, each once. */
function packagesOf(list: PartsList): readonly string[] {
  const known = PACKAGES.get(list);
  if (known) return known;
  const texts = list.lines.map(({ cells }) =>
    fold((cells.package?.text ?? "").replace(/^[^:]*:/, "")),
  );
  const packages = [...new Set(texts)];
  PACKAGES.set(list, packages);
  return packages;
}

function* offBoard(guide: Guide): Iterable<FrontMatterProblem> {
  for (const { value, span } of guide.frontMatter.offBoard) {
    if (isPart(value, guide)) continue;
    const what = `The parts list has no part "${value}", so this takes nothing off the board.`;
    yield unknown(span, what, value, []);
  }
}

function* spares(guide: Guide): Iterable<FrontMatterProblem> {
  const keys = new HardwareKeys(guide.hardware);
  for (const { name, nameSpan } of guide.frontMatter.spares) {
    if (keys.find(name).length > 0) continue;
    const what = `No line of the parts list without designators fits "${name}", so these spares count nowhere.`;
    yield unknown(nameSpan, what, name, []);
  }
}

/** A kit of one board may call it anything. */
function* boards({ frontMatter, boards }: Guide): Iterable<FrontMatterProblem> {
  if (boards.length === 0) return;
  const folded = boards.map(fold);
  for (const { name, nameSpan } of frontMatter.clearance) {
    if (name === "" || folded.includes(fold(name))) continue;
    const what = `No board is called "${name}". The parts list has: ${boards.join(", ")}.`;
    yield unknown(nameSpan, what, name, boards);
  }
}

function isPart(text: string, guide: Guide): boolean {
  return namesOf(text).some((name) => guide.find(name) !== undefined);
}

function unknown(
  span: Span,
  what: string,
  written: string,
  known: readonly string[],
): FrontMatterProblem {
  const meant = nearestWord(written, known);
  if (!meant) return { span, message: `${what} Correct the name, or remove the entry.` };
  return {
    span,
    message: `${what} Did you mean ${meant}?`,
    suggestion: { title: `Write ${meant}`, span, text: meant },
  };
}

function fold(text: string): string {
  return text.trim().toLowerCase();
}
