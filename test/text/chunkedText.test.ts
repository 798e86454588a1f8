import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { ChunkedText } from "../../server/src/text/chunkedText.ts";

const long = fc.string({ minLength: 1, maxLength: 30 }).map((unit) => unit.repeat(4000));
const texts = fc.oneof(fc.string(), long);

describe("a text in chunks", () => {
  test("is after any edits the text that strings would give", () => {
    const edits = fc.array(fc.tuple(fc.nat(), fc.nat(), texts), { maxLength: 6 });
    fc.assert(
      fc.property(texts, edits, fc.nat(), fc.nat(), (text, changes, a, b) => {
        let plain = text;
        let chunked = ChunkedText.from(text);
        for (const [x, y, insert] of changes) {
          const ends = [x % (plain.length + 1), y % (plain.length + 1)].sort((p, q) => p - q);
          const [start, end] = ends as [number, number];
          plain = plain.slice(0, start) + insert + plain.slice(end);
          chunked = chunked.replaced(start, end, insert);
        }
        const [from, to] = [a % (plain.length + 1), b % (plain.length + 2)];
        expect(chunked.length).toBe(plain.length);
        expect(chunked.slice(from, to)).toBe(from < to ? plain.slice(from, to) : "");
        expect(chunked.charCodeAt(from)).toBe(plain.charCodeAt(from));
        expect(chunked.toString()).toBe(plain);
      }),
      { numRuns: 500 },
    );
  });

  test("stays as it was when another is made from it", () => {
    const before = ChunkedText.from("abc".repeat(20_000));
    const after = before.replaced(3, 6, "xyz");
    expect(before.slice(0, 9)).toBe("abcabcabc");
    expect(after.slice(0, 9)).toBe("abcxyzabc");
  });
});
