/** Text back to bytes in the encoding its file has, byte-order mark included. */

/**
 * The bytes of `text` written as the file `original` is, or undefined when the encoding has no
 * place for one of the characters.
 */
export function encodeLike(
  text: string,
  encoding: string,
  original: Uint8Array,
): Uint8Array | undefined {
  switch (encoding) {
    case "utf-8":
      // Half of a surrogate pair has no UTF-8 form.
      return /[\uD800-\uDFFF]/u.test(text) ? undefined : utf8(text, original);
    case "utf-16le":
    case "utf-16be":
      return utf16(text, encoding === "utf-16le", original);
    default:
      return singleByte(text, encoding);
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

/** The inverse of the platform's decoder, so that both agree on every byte. */
function singleByte(text: string, encoding: string): Uint8Array | undefined {
  const decoded = new TextDecoder(encoding).decode(Uint8Array.from({ length: 256 }, (_, i) => i));
  const codes = new Map([...decoded].map((char, byte) => [char, byte]));
  const bytes = new Uint8Array(text.length);
  for (let i = 0; i < text.length; i++) {
    const byte = codes.get(text[i]!);
    if (byte === undefined) return undefined;
    bytes[i] = byte;
  }
  return bytes;
}
