/** Base64 (RFC 4648, section 4). */

const DIGITS = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
const CODES = Uint8Array.from(DIGITS, (sign) => sign.charCodeAt(0));
const FILLING = "=".charCodeAt(0);

/** Both signs of each 12 bits, as they lie in memory on this machine. */
const PAIRS = new Uint16Array(4096);
const PAIR_BYTES = new Uint8Array(PAIRS.buffer);
for (let bits = 0; bits < 4096; bits++) {
  PAIR_BYTES[2 * bits] = CODES[bits >> 6]!;
  PAIR_BYTES[2 * bits + 1] = CODES[bits & 63]!;
}

/** The bytes as base64, in ASCII. By tables: the `btoa` of Node takes a string and is slow with large pictures. */
export function base64(bytes: Uint8Array): Uint8Array {
  const signs = new Uint8Array(4 * Math.ceil(bytes.length / 3)).fill(FILLING);
  const pairs = new Uint16Array(signs.buffer);
  const rest = bytes.length % 3;
  const whole = bytes.length - rest;
  for (let from = 0, to = 0; from < whole; from += 3, to += 2) {
    const bits = (bytes[from]! << 16) | (bytes[from + 1]! << 8) | bytes[from + 2]!;
    pairs[to] = PAIRS[bits >> 12]!;
    pairs[to + 1] = PAIRS[bits & 4095]!;
  }
  if (rest > 0) {
    const to = (whole / 3) * 4;
    const [first, second = 0] = bytes.subarray(whole);
    const bits = (first! << 16) | (second << 8);
    signs[to] = CODES[bits >> 18]!;
    signs[to + 1] = CODES[(bits >> 12) & 63]!;
    if (rest === 2) signs[to + 2] = CODES[(bits >> 6) & 63]!;
  }
  return signs;
}
