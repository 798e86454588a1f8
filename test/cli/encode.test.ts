import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { encodeLike } from "../../server/src/cli/encode.ts";

const MARKED = {
  "utf-8": [0xef, 0xbb, 0xbf],
  "utf-16le": [0xff, 0xfe],
  "utf-16be": [0xfe, 0xff],
};

describe("text goes back into the encoding it came in", () => {
  test.each(["utf-8", "utf-16le", "utf-16be"] as const)(
    "%s, with a mark and without",
    (encoding) => {
      fc.assert(
        fc.property(fc.string({ unit: "grapheme" }), fc.boolean(), (text, marked) => {
          const original = new Uint8Array(marked ? MARKED[encoding] : [65, 0]);
          const bytes = encodeLike(text, encoding, original)!;
          // Outside source: the platform's decoder (WHATWG Encoding).
          const decoded = new TextDecoder(encoding, { ignoreBOM: true }).decode(bytes);
          expect(decoded).toBe(marked ? `\uFEFF${text}` : text);
        }),
      );
    },
  );

  test("windows-1252, where it can", () => {
    const bytes = encodeLike("µ – €", "windows-1252", new Uint8Array());
    expect(bytes).toEqual(Uint8Array.of(0xb5, 32, 0x96, 32, 0x80));
    expect(encodeLike("10 kΩ", "windows-1252", new Uint8Array())).toBeUndefined();
  });

  test("half a surrogate pair has no UTF-8 form", () => {
    expect(encodeLike("\uD83D", "utf-8", new Uint8Array())).toBeUndefined();
  });
});
