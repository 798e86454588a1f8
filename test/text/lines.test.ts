import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { LineIndex } from "../../server/src/text/lines.ts";

const texts = fc.string({
  unit: fc.constantFrom("a", "\n", "\r", "\r\n", "😀", "b"),
  maxLength: 40,
});

describe("the line index", () => {
  test("counts columns in UTF-16 units and lines at LF, CRLF and CR", () => {
    const index = new LineIndex("a\r\nb😀c\rd\n");
    expect(index.count).toBe(4);
    expect(index.positionAt(3)).toEqual({ line: 1, column: 0 });
    expect(index.positionAt(6)).toEqual({ line: 1, column: 3 });
    expect(index.offsetAt({ line: 2, column: 0 })).toBe(8);
    expect(index.offsetAt({ line: 9, column: 0 })).toBe(10);
  });

  test("after any edit equals a fresh index of the text", () => {
    fc.assert(
      fc.property(texts, texts, fc.nat(), fc.nat(), (text, replacement, a, b) => {
        const [start, end] = [a % (text.length + 1), b % (text.length + 1)].sort((x, y) => x - y);
        const after = text.slice(0, start) + replacement + text.slice(end);
        const index = new LineIndex(text);
        index.edit(start!, end!, replacement, after);
        const fresh = new LineIndex(after);
        const lines = (one: LineIndex) =>
          Array.from({ length: one.count }, (_, line) => one.lineStart(line));
        expect(lines(index)).toEqual(lines(fresh));
      }),
      { numRuns: 2000 },
    );
  });
});
