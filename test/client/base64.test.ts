import fc from "fast-check";
import { expect, test } from "vitest";
import { toBase64 } from "../../client/src/base64.ts";

/** RFC 4648, section 10, test vectors. */
test.each([
  ["", ""],
  ["f", "Zg=="],
  ["fo", "Zm8="],
  ["foo", "Zm9v"],
  ["foob", "Zm9vYg=="],
  ["fooba", "Zm9vYmE="],
  ["foobar", "Zm9vYmFy"],
])("base64 of %j is %j", (text, base64) => {
  expect(toBase64(new TextEncoder().encode(text))).toBe(base64);
});

test("any bytes are written as Node's own base64 writes them", () => {
  const bytes = fc.uint8Array({ maxLength: 200_000, size: "max" });
  fc.assert(
    fc.property(bytes, (some) => toBase64(some) === Buffer.from(some).toString("base64")),
    { numRuns: 20 },
  );
});
