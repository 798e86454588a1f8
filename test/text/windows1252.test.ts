import { expect, test } from "vitest";
import { decodeWindows1252, encodeWindows1252 } from "../../server/src/text/windows1252.ts";

const all = Uint8Array.from({ length: 256 }, (_, i) => i);

test("dashes, quotes and the micro sign are read", () => {
  expect(decodeWindows1252(Uint8Array.of(0x52, 0x31, 0x96, 0x52, 0x34))).toBe("R1–R4");
  expect(decodeWindows1252(Uint8Array.of(0x80, 0x93, 0x94, 0xb5, 0xfc))).toBe("€“”µü");
});

test("every byte comes back as it was", () => {
  expect(encodeWindows1252(decodeWindows1252(all))).toEqual(all);
  expect(new Set(decodeWindows1252(all)).size).toBe(256);
});

test("the bytes agree with Windows-1254, which differs in eight letters only", () => {
  // Outside source: the platform's decoder (WHATWG index-windows-1254, through ICU).
  const turkish = new TextDecoder("windows-1254").decode(all);
  const different = [...decodeWindows1252(all)].filter((char, byte) => char !== turkish[byte]);
  expect(different.join("")).toBe("ŽžÐÝÞðýþ");
});

test("what the encoding lacks is refused", () => {
  expect(encodeWindows1252("10 kΩ")).toBeUndefined();
  expect(encodeWindows1252("🔧")).toBeUndefined();
});
