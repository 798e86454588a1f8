/** Text back to bytes in the encoding its file has, byte-order mark included. */
import type { Encoding } from "../text/decode.ts";
import { encodeWindows1252 } from "../text/windows1252.ts";

/**
 * The bytes of `text` written as the file `original` is, or undefined when the encoding has no
 * place for one of the characters.
 */
export function encodeLike(
  text: string,
  encoding: Encoding,
  original: Uint8Array,
): Uint8Array | undefined {
  switch (encoding) {
    case "utf-8":
      // Half of a surrogate pair has no UTF-8 form.
      return /[\uD800-\uDFFF]/u.test(text) ? undefined : utf8(text, original);
    case "utf-16le":
    case "utf-16be":
      return utf16(text, encoding === "utf-16le", original);
    case "windows-1252":
      return encodeWindows1252(text);
  }
}

const UTF8_MARK = [0xef, 0xbb, 0xbf];

function utf8(text: string, original: Uint8Array): Uint8Array {
  const marked = UTF8_MARK.every((byte, index) => original[index] === byte);
  return new TextEncoder().encode(marked ? `\uFEFF${text}` : text);
}

function utf16(text: string, littleEndian: boolean, original: Uint8Array): Uint8Array {
  const low = original[littleEndian ? 0 : 1];
  const high = original[littleEndian ? 1 : 0];
  const marked = low === 0xff && high === 0xfe;
  const units = marked ? `\uFEFF${text}` : text;
  const view = new DataView(new ArrayBuffer(units.length * 2));
  for (let i = 0; i < units.length; i++) view.setUint16(i * 2, units.charCodeAt(i), littleEndian);
  return new Uint8Array(view.buffer);
}
