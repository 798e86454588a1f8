/** Figures of the front matter: `P(R50): Iq^2 * R50` says what `{P(R50) = Iq^2 * R50}` does. */
import type { Figure, SyntaxProblem } from "../dialect.ts";
import type { Entry } from "../frontMatter.ts";
import { MappedText } from "../marks/mappedText.ts";
import { readName, splitEquals, splitTolerance, textOf } from "./parseFigure.ts";

/** `source` is the text between the offsets of the entry's value, as YAML has it. */
export function readEntry(
  { name, nameSpan, value, span }: Entry<string>,
  source: string,
): Figure | SyntaxProblem {
  const [body, stated, more] = splitEquals(mapped(value, source, span.start));
  if (more) {
    return {
      span,
      about: "figure",
      message: "A figure holds one expression and one stated value; here is one = too many.",
    };
  }
  const { value: expression, tolerance } = splitTolerance(body!);
  const figureName = readName(mapped(name, name, nameSpan.start));
  return {
    span,
    ...(figureName && { name: figureName }),
    expression: textOf(expression),
    ...(tolerance && { tolerance: textOf(tolerance) }),
    ...(stated && { stated: textOf(stated) }),
  };
}

/** Where YAML has changed the text, by an escape or over several lines, all of it is one place. */
function mapped(value: string, source: string, start: number): MappedText {
  if (value === source) return new MappedText(value, start);
  const offsets = new Array<number>(value.length).fill(start);
  return new MappedText(value, 0, [...offsets, start + source.length]);
}
