/** Makes small workbooks by hand, for what no program writes. */
import { strToU8, zipSync } from "fflate";

const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const RELATED = "http://schemas.openxmlformats.org/package/2006/relationships";

/** A workbook of Office Open XML with one sheet, `Kit`, that holds these rows. `level`: 0 only stores, soon. */
export function xlsx(
  rows: string,
  { doctype = "", texts = [] as readonly string[], level = 6 as 0 | 6 } = {},
): Uint8Array {
  const relation = (id: string, type: string, target: string) =>
    `<Relationship Id="${id}" Type="${OFFICE}/${type}" Target="${target}"/>`;
  const shared = texts.map((text) => `<si><t>${text}</t></si>`).join("");
  const files = {
    "[Content_Types].xml": `<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"/>`,
    "_rels/.rels": `<Relationships xmlns="${RELATED}">${relation("r1", "officeDocument", "xl/workbook.xml")}</Relationships>`,
    "xl/workbook.xml": `<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}"><sheets><sheet name="Kit" sheetId="1" r:id="r1"/></sheets></workbook>`,
    "xl/_rels/workbook.xml.rels": `<Relationships xmlns="${RELATED}">${relation("r1", "worksheet", "/xl/worksheets/sheet1.xml")}${relation("r2", "sharedStrings", "sharedStrings.xml")}</Relationships>`,
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

function zipped(files: Readonly<Record<string, string>>, level: 0 | 6 = 6): Uint8Array {
  return zipSync(
    Object.fromEntries(Object.entries(files).map(([name, text]) => [name, strToU8(text)])),
    { level },
  );
}
