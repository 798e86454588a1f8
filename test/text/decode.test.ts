/** Bytes as text: encodings are told apart, other kinds of file are named, sizes are bounded. */
import { execFileSync, spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { gzipSync } from "node:zlib";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type Decoded,
  decodeText,
  MAX_TEXT_BYTES,
  type NoText,
} from "../../server/src/text/decode.ts";
import { encodeWindows1252 } from "../../server/src/text/windows1252.ts";

/** UTF-16 as Node writes it, the bytes swapped for big-endian. */
function utf16(text: string, big = false): Uint8Array {
  const bytes = Buffer.from(text, "utf16le");
  return new Uint8Array(big ? bytes.swap16() : bytes);
}

function utf8(text: string): Uint8Array {
  return new Uint8Array(Buffer.from(text, "utf8"));
}

function text(bytes: Uint8Array): Decoded {
  const decoded = decodeText(bytes);
  if (!("text" in decoded)) throw new Error(decoded.problem);
  return decoded;
}

function kind(bytes: Uint8Array): string {
  return (decodeText(bytes) as NoText).kind;
}

const LIST = "Bezeichner;Wert;Stück\r\nR1–R4;4,7 kΩ;4\r\nC1;10 µF;1\r\n";
const LATIN = LIST.replaceAll("Ω", "ohm");
const BOM = "\uFEFF";

describe("encodings", () => {
  test.each([
    ["UTF-8", utf8(LIST), "utf-8"],
    ["UTF-8 with mark", utf8(BOM + LIST), "utf-8"],
    ["UTF-16, little-endian with mark", utf16(BOM + LIST), "utf-16le"],
    ["UTF-16, big-endian with mark", utf16(BOM + LIST, true), "utf-16be"],
    ["UTF-16, little-endian without mark", utf16(LIST), "utf-16le"],
    ["UTF-16, big-endian without mark", utf16(LIST, true), "utf-16be"],
  ] as const)("are told and read: %s", (_, bytes, encoding) => {
    expect(text(bytes)).toEqual({ text: LIST, encoding });
  });

  test("Windows-1252 is what is no UTF-8", () => {
    expect(text(encodeWindows1252(LATIN)!)).toEqual({ text: LATIN, encoding: "windows-1252" });
    expect(text(Uint8Array.of(0x31, 0x30, 0x20, 0xb5, 0x46)).text).toBe("10 µF");
  });

  // Outside source: the C library's converter.
  test.skipIf(spawnSync("iconv", ["--version"]).status !== 0)("agree with iconv", () => {
    const converted = (from: string, bytes: Uint8Array) =>
      execFileSync("iconv", ["-f", from, "-t", "UTF-8"], { input: bytes }).toString("utf8");
    expect(converted("WINDOWS-1252", encodeWindows1252(LATIN)!)).toBe(LATIN);
    expect(converted("UTF-16LE", utf16(LIST))).toBe(text(utf16(LIST)).text);
    expect(converted("UTF-16BE", utf16(LIST, true))).toBe(text(utf16(LIST, true)).text);
  });

  test("any text in UTF-8 comes back as it was", () => {
    const any = fc
      .string({ unit: fc.oneof(fc.constantFrom(..."aµΩ–é漢😀\n\t;,"), fc.constant("\r\n")) })
      .filter((one) => !one.startsWith(BOM));
    fc.assert(
      fc.property(any, fc.boolean(), (one, mark) => {
        expect(text(utf8((mark ? BOM : "") + one))).toEqual({ text: one, encoding: "utf-8" });
      }),
    );
  });

  test("any list in UTF-16 comes back as it was", () => {
    const row = fc
      .tuple(
        fc.constantFrom("R1", "C2, C3", "U$4"),
        fc.constantFrom("10k", "4,7 µF", "漢字 X", "10 Ω"),
      )
      .map(([name, value]) => `${name}\t${value}\tpart of the kit`);
    fc.assert(
      fc.property(
        fc.array(row, { minLength: 1 }),
        fc.boolean(),
        fc.boolean(),
        (rows, big, mark) => {
          const one = rows.join("\n");
          expect(text(utf16((mark ? BOM : "") + one, big)).text).toBe(one);
        },
      ),
    );
  });

  test("a mark is taken off once, and only at the start", () => {
    expect(text(utf8(`${BOM}${BOM}R1`)).text).toBe(`${BOM}R1`);
    expect(text(utf8(`R1${BOM}`)).text).toBe(`R1${BOM}`);
  });

  test("no bytes are an empty text", () => {
    expect(text(new Uint8Array())).toEqual({ text: "", encoding: "utf-8" });
    expect(text(utf8(BOM)).text).toBe("");
    expect(text(utf16(BOM)).text).toBe("");
  });

  test("a file cut off within a letter keeps what is before it", () => {
    const cut = utf8("R1;10 µF;4,7 kΩ").subarray(0, -1);
    expect(text(cut)).toEqual({ text: "R1;10 µF;4,7 k\uFFFD", encoding: "utf-8" });
    const half = utf16(`${BOM}R1;10 µF`).subarray(0, -1);
    expect(text(half)).toEqual({ text: "R1;10 µ\uFFFD", encoding: "utf-16le" });
    // After ASCII alone a last odd byte is more likely a letter of eight bits.
    expect(text(Uint8Array.of(0x31, 0x30, 0xb5)).text).toBe("10µ");
    expect(text(Uint8Array.of(0x31, 0x30, 0xe9)).text).toBe("10é");
  });

  test("control characters that text has are no sign of a binary file", () => {
    expect(text(utf8("R1\t10k\f\r\nR2\v22k\u001a")).encoding).toBe("utf-8");
  });
});

describe("other kinds of file are named", () => {
  const start = (signature: string) =>
    Uint8Array.from(signature.padEnd(64, "\0\x01\x02"), (char) => char.charCodeAt(0));

  // Signatures as the formats' own specifications define them.
  test.each([
    ["%PDF-1.7\n", "a PDF document"],
    ["\x89PNG\r\n\x1a\n", "a PNG picture"],
    ["\xff\xd8\xff\xe0", "a JPEG picture"],
    ["GIF89a", "a GIF picture"],
    ["II*\0", "a TIFF picture"],
    [
      "\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1",
      "an office document of the older binary kind (.xls, .doc)",
    ],
    ["7z\xbc\xaf\x27\x1c", "a 7z archive"],
    ["Rar!\x1a\x07\x01\0", "a RAR archive"],
    ["SQLite format 3\0", "a database"],
    ["PK\x05\x06", "an empty zip archive"],
    ["PK\x03\x04 a.txt", "a zip archive"],
    ["PK\x03\x04 xl/workbook.xml", "a spreadsheet workbook (.xlsx)"],
    ["PK\x03\x04 word/document.xml", "a word processor document (.docx)"],
    ["PK\x03\x04 mimetypeapplication/vnd.oasis.opendocument.spreadsheet", "a spreadsheet (.ods)"],
    [
      "PK\x03\x04 mimetypeapplication/vnd.oasis.opendocument.text",
      "an office document (OpenDocument)",
    ],
  ])("%j is %s", (signature, expected) => {
    expect(kind(start(signature))).toBe(expected);
  });

  test("a real gzip archive and a real picture", () => {
    expect(kind(new Uint8Array(gzipSync("R1,10k")))).toBe("a gzip archive");
    expect(kind(new Uint8Array(readFileSync("media/icon.png")))).toBe("a PNG picture");
  });

  test("a workbook whose sheets are named at the end of the archive only", () => {
    const bytes = new Uint8Array(200_000).fill(7);
    bytes.set(start("PK\x03\x04 [Content_Types].xml"), 0);
    bytes.set(start("xl/worksheets/sheet1.xml"), 190_000);
    expect(kind(bytes)).toBe("a spreadsheet workbook (.xlsx)");
  });

  test("zeros and control characters make a binary file", () => {
    expect(kind(new Uint8Array(500))).toBe("a binary file");
    expect(kind(utf8("R1,10k\0R2,22k"))).toBe("a binary file");
    expect(kind(Uint8Array.from({ length: 4_000 }, (_, i) => (i * 7919) % 256))).toBe(
      "a binary file",
    );
  });

  test("the problem says what it is and what follows", () => {
    expect(decodeText(start("%PDF-1.7"))).toEqual({
      kind: "a PDF document",
      problem: "This is a PDF document, not text, so nothing in it can be read.",
    });
  });

  test("whatever the bytes, they are text or a named kind", () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => {
        const decoded = decodeText(bytes);
        if ("text" in decoded) expect(decoded.text).not.toContain("\0");
        else expect(decoded.problem).toMatch(/^This is an? .*\.$/);
      }),
      { numRuns: 2_000 },
    );
  });
});

describe("sizes", () => {
  test("the largest text is read, one byte more is not", () => {
    const bytes = new Uint8Array(MAX_TEXT_BYTES + 1).fill(0x61);
    expect(text(bytes.subarray(0, MAX_TEXT_BYTES)).text).toHaveLength(MAX_TEXT_BYTES);
    const refused = decodeText(bytes) as NoText;
    expect(refused.problem).toMatch(/^The file has 21 MB; files of more than 20 MB are not read\./);
  });

  test("50 MB are refused, and the size is told", () => {
    const bytes = new Uint8Array(50 * 2 ** 20);
    expect(decodeText(bytes)).toEqual({
      kind: "a file of 50 MB",
      problem:
        "The file has 50 MB; files of more than 20 MB are not read. Check that it is the right file.",
    });
  });
});
