/** Makes small workbooks by hand, for what no program writes. */
import { strToU8, zipSync } from "fflate";

const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const RELATED = "http://schemas.openxmlformats.org/package/2006/relationships";

/**
 * A workbook of Office Open XML with one sheet, `Kit`, that holds these rows. `before`: sheets before
 * it; `level`: 0 only stores, soon.
 */
export function xlsx(
  rows: string,
  { doctype = "", texts = [] as readonly string[], before = "", level = 6 as 0 | 6 } = {},
): Uint8Array {
  const relation = (id: string, type: string, target: string) =>
    `<Relationship Id="${id}" Type="${OFFICE}/${type}" Target="${target}"/>`;
  const shared = texts.map((text) => `<si><t>${text}</t></si>`).join("");
  const files = {
    "[Content_Types].xml": `<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"/>`,
    "_rels/.rels": `<Relationships xmlns="${RELATED}">${relation("r1", "officeDocument", "xl/workbook.xml")}</Relationships>`,
    "xl/workbook.xml": `<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}"><sheets>${before}<sheet name="Kit" sheetId="1" r:id="r1"/></sheets></workbook>`,
    "xl/_rels/workbook.xml.rels": `<Relationships xmlns="${RELATED}">${relation("r1", "worksheet", "/xl/worksheets/sheet1.xml")}${relation("r2", "sharedStrings", "../xl/sharedStrings.xml")}${relation("r3", "chartsheet", "chartsheets/sheet1.xml")}</Relationships>`,
    "xl/sharedStrings.xml": `<sst xmlns="${MAIN}">${shared}</sst>`,
    "xl/worksheets/sheet1.xml": `${doctype}<worksheet xmlns="${MAIN}"><sheetData>${rows}</sheetData></worksheet>`,
  };
  return zipped(files, level);
}

/** A file of OpenDocument whose body holds `content`. */
export function ods(content: string, doctype = "", kind = "spreadsheet"): Uint8Array {
  const spaces = ["office", "table", "text"]
    .map((name) => `xmlns:${name}="urn:oasis:names:tc:opendocument:xmlns:${name}:1.0"`)
    .join(" ");
  return zipped({
    mimetype: `application/vnd.oasis.opendocument.${kind}`,
    "META-INF/manifest.xml": "<manifest/>",
    "content.xml": `${doctype}<office:document-content ${spaces}><office:body><office:${kind}>${content}</office:${kind}></office:body></office:document-content>`,
  });
}

/** The archive as programs write it that allow for more than 4 GB: with the figures of ZIP64 (APPNOTE 4.3.14, 4.5.3). */
export function zip64(bytes: Uint8Array): Uint8Array {
  const end = bytes.length - 22;
  const view = new DataView(bytes.buffer, bytes.byteOffset);
  const headers: Uint8Array[] = [];
  for (let at = view.getUint32(end + 16, true); at < end; ) {
    const length = 46 + view.getUint16(at + 28, true);
    headers.push(wideHeader(bytes.slice(at, at + length)));
    at += length + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  }
  const directory = view.getUint32(end + 16, true);
  const size = headers.reduce((sum, { length }) => sum + length, 0);
  const parts = [
    bytes.subarray(0, directory),
    ...headers,
    wideEnd(directory, size, headers.length),
  ];
  return new Uint8Array(parts.flatMap((part) => [...part]));
}

/** A header of the directory without extra fields, whose sizes and place go into one behind another. */
function wideHeader(header: Uint8Array): Uint8Array {
  const other = [0x99, 0x99, 2, 0, 1, 2];
  const wide = new Uint8Array([...header, ...other, ...new Array<number>(28).fill(0)]);
  const view = new DataView(wide.buffer);
  const extra = header.length + other.length;
  view.setUint16(30, other.length + 28, true);
  view.setUint16(extra, 1, true);
  view.setUint16(extra + 2, 24, true);
  for (const [i, at] of [24, 20, 42].entries()) {
    view.setBigUint64(extra + 4 + 8 * i, BigInt(view.getUint32(at, true)), true);
    view.setUint32(at, 0xffffffff, true);
  }
  return wide;
}

/** ZIP64's end record, the locator that leads to it, and the plain end record without figures. */
function wideEnd(directory: number, size: number, count: number): Uint8Array {
  const view = new DataView(new ArrayBuffer(56 + 20 + 22));
  view.setUint32(0, 0x06064b50, true);
  view.setBigUint64(4, 44n, true);
  view.setUint16(12, 45, true);
  view.setUint16(14, 45, true);
  view.setBigUint64(24, BigInt(count), true);
  view.setBigUint64(32, BigInt(count), true);
  view.setBigUint64(40, BigInt(size), true);
  view.setBigUint64(48, BigInt(directory), true);
  view.setUint32(56, 0x07064b50, true);
  view.setBigUint64(64, BigInt(directory + size), true);
  view.setUint32(72, 1, true);
  view.setUint32(76, 0x06054b50, true);
  for (const at of [8, 10]) view.setUint16(76 + at, 0xffff, true);
  for (const at of [12, 16]) view.setUint32(76 + at, 0xffffffff, true);
  return new Uint8Array(view.buffer);
}

function zipped(files: Readonly<Record<string, string>>, level: 0 | 6 = 6): Uint8Array {
  return zipSync(
    Object.fromEntries(Object.entries(files).map(([name, text]) => [name, strToU8(text)])),
    { level },
  );
}
