/** Base64 (RFC 4648, section 4) by the one function that Node and browsers share. */

/** Arguments of one call are limited by the stack, so long input goes in blocks. */
const BLOCK = 0x6000;

/** The bytes as one line of base64. */
export function toBase64(bytes: Uint8Array): string {
  let binary = "";
  for (let start = 0; start < bytes.length; start += BLOCK) {
    binary += String.fromCharCode(...bytes.subarray(start, start + BLOCK));
  }
  return btoa(binary);
}
