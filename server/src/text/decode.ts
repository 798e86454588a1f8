/** Bytes of a file as text: which encoding it is in, or why it is no text. */
import { fileKind } from "./fileKind.ts";
import { decodeWindows1252 } from "./windows1252.ts";

export type Encoding = "utf-8" | "utf-16le" | "utf-16be" | "windows-1252";

export interface Decoded {
  /** Without byte-order mark. */
  readonly text: string;
  readonly encoding: Encoding;
}

export interface NoText {
  /** What the file is, with its article: `a PDF document`. */
  readonly kind: string;
  /** Why it is not read, as a sentence. */
  readonly problem: string;
}

/** Larger files are refused undecoded: no guide or parts list comes near, and memory stays bounded. */
export const MAX_TEXT_BYTES = 20 * 1024 * 1024;

/**
 * The text of a file: UTF-8 or UTF-16 with or without byte-order mark, else Windows-1252.
 * Never throws.
 */
export function decodeText(bytes: Uint8Array): Decoded | NoText {
  if (bytes.length > MAX_TEXT_BYTES) return tooLarge(bytes.length);
  const kind = fileKind(bytes);
  if (kind) return noText(kind);
  const encoding = encodingOf(bytes);
  const text =
    encoding === "windows-1252"
      ? decodeWindows1252(bytes)
      : new TextDecoder(encoding).decode(bytes);
  return isBinary(text) ? noText("a binary file") : { text, encoding };
}

function noText(kind: string): NoText {
  return { kind, problem: `This is ${kind}, not text, so nothing in it can be read.` };
}

function tooLarge(length: number): NoText {
  const size = `${(length / 2 ** 20).toFixed(length < 2 ** 30 ? 0 : 1)} MB`;
  const most = MAX_TEXT_BYTES / 2 ** 20;
  return {
    kind: `a file of ${size}`,
    problem: `The file has ${size}; files of more than ${most} MB are not read. Check that it is the right file.`,
  };
}

function encodingOf(bytes: Uint8Array): Encoding {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return "utf-16le";
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return "utf-16be";
  if (bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf) return "utf-8";
  return wideEncoding(bytes) ?? (isUtf8(bytes) ? "utf-8" : "windows-1252");
}

/** UTF-16 without mark: most Latin letters have a zero for their other byte. */
function wideEncoding(bytes: Uint8Array): Encoding | undefined {
  const sample = Math.min(bytes.length, 4096);
  let even = 0;
  let odd = 0;
  for (let i = 0; i < sample; i++) {
    if (bytes[i] !== 0) continue;
    if (i % 2 === 0) even++;
    else odd++;
  }
  const many = sample / 4;
  const few = sample / 50;
  if (odd > many && even <= few) return "utf-16le";
  if (even > many && odd <= few) return "utf-16be";
  return undefined;
}

/**
 * Whether the bytes are UTF-8. A last character cut in two is forgiven when there are whole ones
 * before it; else it is more likely a single 8-bit letter.
 */
function isUtf8(bytes: Uint8Array): boolean {
  const decoder = new TextDecoder("utf-8", { fatal: true });
  try {
    const text = decoder.decode(bytes, { stream: true });
    const whole = isWhole(decoder);
    return whole || /[^\u0000-\u007f]/.test(text);
  } catch (error) {
    if (error instanceof TypeError) return false;
    throw error;
  }
}

function isWhole(decoder: TextDecoder): boolean {
  try {
    decoder.decode();
    return true;
  } catch (error) {
    if (error instanceof TypeError) return false;
    throw error;
  }
}

/** Text has no zero characters and next to no control characters. */
function isBinary(text: string): boolean {
  if (text.includes("\0")) return true;
  const sample = text.slice(0, 65_536);
  const controls = sample.match(/[\u0001-\u0008\u000e-\u0019\u001b-\u001f]/g);
  return controls !== null && controls.length > sample.length / 100;
}
