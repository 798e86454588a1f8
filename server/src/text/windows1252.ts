/**
 * Windows-1252, the 8-bit encoding of older office files, both ways. After index-windows-1252 of the
 * WHATWG Encoding standard; the platform's own decoder is not used, since that of Node 20 takes the
 * label for ISO 8859-1 and loses the dashes and quotes at 80–9F.
 */

/** What the bytes 80 to 9F stand for; all others stand for the character of their number. */
const HIGH_CONTROLS = "€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008DŽ\u008F\u0090‘’“”•–—˜™š›œ\u009DžŸ";

const BYTE_OF = new Map([...HIGH_CONTROLS].map((char, index) => [char, 0x80 + index]));

export function decodeWindows1252(bytes: Uint8Array): string {
  const latin = new TextDecoder("latin1").decode(bytes);
  return latin.replace(/[\u0080-\u009F]/g, (char) => HIGH_CONTROLS[char.charCodeAt(0) - 0x80]!);
}

/** The bytes, or undefined when a character has none. */
export function encodeWindows1252(text: string): Uint8Array | undefined {
  const bytes = new Uint8Array(text.length);
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    const byte = code < 0x80 || (code > 0x9f && code < 0x100) ? code : BYTE_OF.get(text[i]!);
    if (byte === undefined) return undefined;
    bytes[i] = byte;
  }
  return bytes;
}
