/** What kind of picture a file holds, told by its content: names lie, and browsers go by the content. */

export interface PictureType {
  readonly media: string;
  /** Of a file's name. */
  readonly ending: string;
}

const SVG: PictureType = { media: "image/svg+xml", ending: "svg" };

/**
 * How files of each kind begin; a blank stands for any byte. Sources: the specifications of the formats
 * (PNG: ISO/IEC 15948, 5.2; JPEG: ITU-T T.81, annex B; GIF89a, section 17; WebP: RFC 9649, 2.4;
 * AVIF: ISO/IEC 23000-22 on ISO/IEC 14496-12; BMP: a file header of type `BM`).
 */
const BEGINNINGS: readonly (readonly [string, PictureType])[] = [
  ["\x89PNG\r\n\x1a\n", { media: "image/png", ending: "png" }],
  ["\xff\xd8\xff", { media: "image/jpeg", ending: "jpg" }],
  ["GIF8", { media: "image/gif", ending: "gif" }],
  ["RIFF    WEBP", { media: "image/webp", ending: "webp" }],
  ["    ftypavi", { media: "image/avif", ending: "avif" }],
  ["BM", { media: "image/bmp", ending: "bmp" }],
];

/** As people say them. */
export const KINDS_SHOWN = "AVIF, BMP, GIF, JPEG, PNG, SVG or WebP";

/** An SVG's first tag stands within so many bytes, behind its prolog and comments. */
const TAG_WITHIN = 4096;

/** Undefined for what browsers do not show as a picture. */
export function pictureType(bytes: Uint8Array): PictureType | undefined {
  const known = BEGINNINGS.find(([beginning]) => beginsWith(bytes, beginning));
  if (known) return known[1];
  const text = new TextDecoder(encodingOf(bytes)).decode(bytes.subarray(0, TAG_WITHIN));
  return /^\s*</.test(text) && /<(?:[\w.-]+:)?svg[\s/>]/.test(text) ? SVG : undefined;
}

/** Whether a PNG stops before its end, as after a copy that was broken off. */
export function isCutShort(bytes: Uint8Array, { ending }: PictureType): boolean {
  if (ending !== "png") return false;
  // The last chunk: no data, its name, and its check sum (ISO/IEC 15948, 11.2.5).
  return !latin(bytes.subarray(-4096)).includes("IEND\xae\x42\x60\x82");
}

/**
 * What a drawing could do that is opened by itself: run scripts, or fetch what others can count. Inside a
 * page, as a picture, browsers let it do neither (SVG 2, chapter 2: the secure modes).
 */
const ACTIVE: readonly RegExp[] = [
  /<(?:[\w.-]+:)?script[\s/>]/iu,
  /<[^<>]*\s(?:on[a-z]+\s*=|(?:[\w-]+:)?href\s*=\s*["']?\s*javascript:)/iu,
  /<(?:[\w.-]+:)?(?:image|use|feImage)\s[^<>]*href\s*=\s*["']?\s*(?:https?:|\/\/)/iu,
];

/** Whether a drawing does something when a browser opens it by itself. */
export function isActive(bytes: Uint8Array, { ending }: PictureType): boolean {
  if (ending !== "svg") return false;
  const drawing = new TextDecoder(encodingOf(bytes)).decode(bytes);
  return ACTIVE.some((pattern) => pattern.test(drawing));
}

function beginsWith(bytes: Uint8Array, beginning: string): boolean {
  if (bytes.length < beginning.length) return false;
  return [...beginning].every((sign, index) => {
    return sign === " " || bytes[index] === sign.charCodeAt(0);
  });
}

function encodingOf([first, second]: Uint8Array): string {
  if (first === 0xff && second === 0xfe) return "utf-16le";
  return first === 0xfe && second === 0xff ? "utf-16be" : "utf-8";
}

function latin(bytes: Uint8Array): string {
  return String.fromCharCode(...bytes);
}
