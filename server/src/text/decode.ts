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
  const decoded = decodeAs(bytes, markOf(bytes) ?? wideEncoding(bytes));
  return isBinary(decoded.text) ? noText("a binary file") : decoded;
}

/** Without a known encoding: UTF-8 if the bytes are such, else Windows-1252. */
function decodeAs(bytes: Uint8Array, encoding: Encoding | undefined): Decoded {
  if (encoding) return { text: new TextDecoder(encoding).decode(bytes), encoding };
  const text = readUtf8(bytes);
  return text === undefined
    ? { text: decodeWindows1252(bytes), encoding: "windows-1252" }
    : { text, encoding: "utf-8" };
}

function noText(kind: string): NoText {
  return { kind, problem: `This is ${kind}, not text, so nothing in it can be read.` };
}

function tooLarge(length: number): NoText {
  const size = `${Math.ceil(length / 2 ** 20)} MB`;
  const most = MAX_TEXT_BYTES / 2 ** 20;
  return {
    kind: `a file of ${size}`,
    problem: `The file has ${size}; files of more than ${most} MB are not read. Check that it is the right file.`,
  };
}

/** What the byte-order mark says. */
function markOf(bytes: Uint8Array): Encoding | undefined {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return "utf-16le";
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return "utf-16be";
  return bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? "utf-8" : undefined;
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
 * The text if the bytes are UTF-8. A last character cut in two is forgiven when there are whole ones
 * beyond ASCII before it; else it is more likely a single 8-bit letter.
 */
function readUtf8(bytes: Uint8Array): string | undefined {
  // Read as a stream, which waits for the end of a last character that is cut, a text takes twice
  // the memory in Node.
  const text = decodeUtf8(bytes, false);
  if (text !== undefined) return text;
  const cut = decodeUtf8(bytes, true);
  return cut !== undefined && /[^\u0000-\u007f]/.test(cut) ? `${cut}\uFFFD` : undefined;
}

/** Undefined where the bytes are not UTF-8. */
function decodeUtf8(bytes: Uint8Array, stream: boolean): string | undefined {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes, { stream });
  } catch (error) {
    if (error instanceof TypeError) return undefined;
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
