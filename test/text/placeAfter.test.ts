import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { LineIndex } from "../../server/src/text/lines.ts";
import { placeAfter } from "../../server/src/text/placeAfter.ts";
import { applyEdits, type TextEdit } from "../../server/src/text/span.ts";

// A lone CR could meet a LF at the border of an edit, which no edit of ours makes.
const texts = fc.string({ unit: fc.constantFrom("a", "\n", "b", "😀"), maxLength: 30 });

/** A text and edits of it that do not overlap. */
const edited = texts.chain((text) =>
  fc
    .tuple(
      fc.array(fc.nat(text.length), { maxLength: 8 }),
      fc.array(texts, { minLength: 4, maxLength: 4 }),
    )
    .map(([places, written]) => {
      const sorted = places.sort((a, b) => a - b);
      const edits: TextEdit[] = [];
      for (let i = 0; i + 1 < sorted.length; i += 2) {
        const span = { start: sorted[i]!, end: sorted[i + 1]! };
        edits.push({ span, text: written[i / 2]! });
      }
      return { text, edits };
    }),
);

describe("the place of an offset after edits", () => {
  test("is the one that it has in the text after them", () => {
    fc.assert(
      fc.property(edited, ({ text, edits }) => {
        const after = applyEdits(text, edits);
        const [before, then] = [new LineIndex(text), new LineIndex(after)];
        for (let offset = 0; offset <= after.length; offset++) {
          expect(placeAfter(offset, edits, before)).toEqual(then.positionAt(offset));
        }
      }),
    );
  });

  test("counts CRLF as one line end", () => {
    const lines = new LineIndex("a\r\nb\r\n");
    const edits = [{ span: { start: 3, end: 3 }, text: "x\r\ny" }];
    expect(placeAfter(7, edits, lines)).toEqual({ line: 2, column: 1 });
  });
});
