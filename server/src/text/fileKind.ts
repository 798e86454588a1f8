/** Kinds of file that are no text, known by their first bytes. */

/** What the file is, with its article, or undefined when the first bytes belong to no known kind. */
export function fileKind(bytes: Uint8Array): string | undefined {
  if (startsWith(bytes, "PK\x03\x04")) return archiveKind(bytes);
  if (startsWith(bytes, COMPOUND) && includes(bytes, ENCRYPTED)) {
    return "a workbook or document that is locked with a password";
  }
  return SIGNATURES.find(([signature]) => startsWith(bytes, signature))?.[1];
}

/** Whether the bytes are an archive that may hold a workbook. */
export function isWorkbook(bytes: Uint8Array): boolean {
  return startsWith(bytes, "PK\x03\x04");
}

/** Compound File Binary Format. */
const COMPOUND = "\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1";
/** What such a file calls its stream with a locked Office Open XML file (MS-OFFCRYPTO 2.3.4.4). */
const ENCRYPTED = Array.from("EncryptedPackage", (letter) => `${letter}\0`).join("");

/** Signatures as the formats define them; each character stands for one byte. */
const SIGNATURES: readonly (readonly [string, string])[] = [
  ["PK\x05\x06", "an empty zip archive"],
  [COMPOUND, "an office document of the older binary kind (.xls, .doc)"],
  ["%PDF-", "a PDF document"],
  ["\x89PNG\r\n\x1a\n", "a PNG picture"],
  ["\xff\xd8\xff", "a JPEG picture"],
  ["GIF87a", "a GIF picture"],
  ["GIF89a", "a GIF picture"],
  ["II*\x00", "a TIFF picture"],
  ["MM\x00*", "a TIFF picture"],
  ["\x1f\x8b", "a gzip archive"],
  ["7z\xbc\xaf\x27\x1c", "a 7z archive"],
  ["Rar!\x1a\x07", "a RAR archive"],
  ["SQLite format 3\x00", "a database"],
];

/** What a zip archive holds; office documents are zip archives with known entries. */
function archiveKind(bytes: Uint8Array): string {
  const head = latin(bytes, 0, 4096);
  if (head.includes("opendocument.spreadsheet")) return "a spreadsheet (.ods)";
  if (head.includes("opendocument.")) return "an office document (OpenDocument)";
  const names = head + latin(bytes, Math.max(0, bytes.length - 65_536), bytes.length);
  if (names.includes("xl/")) return "a spreadsheet workbook (.xlsx)";
  if (names.includes("word/")) return "a word processor document (.docx)";
  return "a zip archive";
}

function startsWith(bytes: Uint8Array, signature: string): boolean {
  for (let i = 0; i < signature.length; i++) {
    if (bytes[i] !== signature.charCodeAt(i)) return false;
  }
  return true;
}

function includes(bytes: Uint8Array, wanted: string): boolean {
  return latin(bytes, 0, bytes.length).includes(wanted);
}

function latin(bytes: Uint8Array, from: number, to: number): string {
  return new TextDecoder("latin1").decode(bytes.subarray(from, to));
}
