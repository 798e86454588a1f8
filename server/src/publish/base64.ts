/** Base64 (RFC 4648, section 4). */

const DIGITS = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
const CODES = Uint8Array.from(DIGITS, (sign) => sign.charCodeAt(0));
const FILLING = "=".charCodeAt(0);

/** The bytes as base64, in ASCII. By tables: the `btoa` of Node takes a string and is slow with large pictures. */
export function base64(bytes: Uint8Array): Uint8Array {
  const signs = new Uint8Array(4 * Math.ceil(bytes.length / 3)).fill(FILLING);
  const rest = bytes.length % 3;
  const whole = bytes.length - rest;
  let to = 0;
  for (let from = 0; from < whole; from += 3, to += 4) {
    const bits = (bytes[from]! << 16) | (bytes[from + 1]! << 8) | bytes[from + 2]!;
    signs[to] = CODES[bits >> 18]!;
    signs[to + 1] = CODES[(bits >> 12) & 63]!;
    signs[to + 2] = CODES[(bits >> 6) & 63]!;
    signs[to + 3] = CODES[bits & 63]!;
  }
  if (rest > 0) {
    const [first, second = 0] = bytes.subarray(whole);
    const bits = (first! << 16) | (second << 8);
    signs[to] = CODES[bits >> 18]!;
    signs[to + 1] = CODES[(bits >> 12) & 63]!;
    if (rest === 2) signs[to + 2] = CODES[(bits >> 6) & 63]!;
  }
  return signs;
}
