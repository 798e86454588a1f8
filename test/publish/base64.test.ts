/** Bytes written as base64. Source: RFC 4648, section 10, and Node's own `Buffer`. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { base64 } from "../../server/src/publish/base64.ts";

const ascii = (bytes: Uint8Array) => Buffer.from(bytes).toString("latin1");

test.each([
  ["", ""],
  ["f", "Zg=="],
  ["fo", "Zm8="],
  ["foo", "Zm9v"],
  ["foob", "Zm9vYg=="],
  ["fooba", "Zm9vYmE="],
  ["foobar", "Zm9vYmFy"],
])("%j is %j", (text, expected) => {
  expect(ascii(base64(Buffer.from(text)))).toBe(expected);
});

test("any bytes are written as Node writes them", () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 200 }), (bytes) => {
      expect(ascii(base64(bytes))).toBe(Buffer.from(bytes).toString("base64"));
    }),
  );
});
