/** Whether Markdown still reads each step, note, heading and comment as before once lines moved. */
import type { Fact } from "../../syntax/facts.ts";
import { applyEdits, type Span, shift, type TextEdit } from "../../text/span.ts";
import { digestOf, type Stretch, spanOf } from "./stretch.ts";

/**
 * Reads the stretch as it would be after the edits, which exchange the lines `moved` with their
 * neighbours `passed`. Indentation, open paragraphs and the number of a first item can all make
 * Markdown read the same lines differently in another place.
 */
export function readsAlike(
  stretch: Stretch,
  moved: Span,
  passed: Span,
  edits: readonly TextEdit[],
): boolean {
  const { page, span, digest } = stretch;
  const text = page.text.slice(span.start, span.end);
  const after = edited(stretch, edits);
  const read = digestOf(after);
  const expected = exchange(digest.facts, shift(moved, -span.start), shift(passed, -span.start));
  return (
    sameTexts(signs(expected, text), signs(read.facts, after)) &&
    sameTexts(
      digest.problems.map((problem) => problem.message).sort(),
      read.problems.map((problem) => problem.message).sort(),
    ) &&
    sameTexts([...digest.defines.links].sort(), [...read.defines.links].sort()) &&
    sameTexts([...digest.defines.footnotes].sort(), [...read.defines.footnotes].sort())
  );
}

/** Whether two ways to edit the stretch leave facts of the same kinds, one after another. */
export function readAsAlike(
  stretch: Stretch,
  one: readonly TextEdit[],
  other: readonly TextEdit[],
): boolean {
  const kinds = (edits: readonly TextEdit[]) => signs(digestOf(edited(stretch, edits)).facts, "");
  return sameTexts(kinds(one), kinds(other));
}

function edited({ page, span }: Stretch, edits: readonly TextEdit[]): string {
  const local = edits.map((edit) => ({ ...edit, span: shift(edit.span, -span.start) }));
  return applyEdits(page.text.slice(span.start, span.end), local);
}

/** The facts in the order in which they should stand afterwards. */
function exchange(facts: readonly Fact[], moved: Span, passed: Span): Fact[] {
  const [upper, lower] = moved.start < passed.start ? [moved, passed] : [passed, moved];
  const within = (span: Span) => (fact: Fact) => {
    const { start } = spanOf(fact);
    return start >= span.start && start < span.end;
  };
  return [
    ...facts.filter((fact) => spanOf(fact).start < upper.start),
    ...facts.filter(within(lower)),
    ...facts.filter(within(upper)),
    ...facts.filter((fact) => spanOf(fact).start >= lower.end),
  ];
}

/** Each fact as far as it must not change: what it is, and its own text. */
function signs(facts: readonly Fact[], text: string): string[] {
  return facts.map((fact) => {
    const span = spanOf(fact);
    const kind =
      fact.kind === "step"
        ? `${fact.source} ${fact.depth}`
        : fact.kind === "comment"
          ? `comment ${fact.inline}`
          : fact.kind;
    return `${kind}: ${text.slice(span.start, span.end).trim()}`;
  });
}

function sameTexts(a: readonly string[], b: readonly string[]): boolean {
  return a.length === b.length && a.every((one, index) => one === b[index]);
}
