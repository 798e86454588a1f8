/** Workbooks of Office Open XML (ECMA-376, ISO/IEC 29500), transitional and strict: `.xlsx`, `.xlsm`. */

import { withoutEmptyRows } from "./emptyRows.ts";
import { builtInFormat } from "./numberFormat.ts";
import { DAMAGED, Refused } from "./refused.ts";
import type { Sheet } from "./sheet.ts";
import { readWorksheet, type SheetContext } from "./xlsxSheet.ts";
import { isTrue, type ReadPart, RichText } from "./xlsxText.ts";
import { type Attributes, attributeOf, decodeXml, readXml, type XmlHandler } from "./xml.ts";
import { type Archive, type Budget, spendText } from "./zip.ts";

/** The file's entry that leads to the workbook (Open Packaging Conventions, 8.3). */
const ROOT_RELATIONS = "_rels/.rels";

export function isXlsx(archive: Archive): boolean {
  return archive.has(ROOT_RELATIONS) && archive.has("[Content_Types].xml");
}

/** A sheet and how to read its rows. */
export interface SheetEntry {
  readonly name: string;
  readonly isHidden: boolean;
  read(): Sheet;
}

/** The workbook's sheets in order; rows are read on demand. Throws Refused. */
export function openXlsx(archive: Archive, budget: Budget): SheetEntry[] {
  const textOf = (name: string) => decodeXml(archive.unpack(name, budget));
  const read = (name: string, handler: XmlHandler) =>
    readXml(spendText(textOf(name), budget), handler, DAMAGED);
  const readRows = (name: string, handler: XmlHandler) =>
    readXml(spendText(withoutEmptyRows(textOf(name)), budget), handler, DAMAGED);
  const main = relations(ROOT_RELATIONS, "", read).find(({ type }) => type === "officeDocument");
  if (!main) throw new Refused(DAMAGED);
  const folder = main.target.slice(0, main.target.lastIndexOf("/") + 1);
  const own = main.target.slice(folder.length);
  const related = relations(`${folder}_rels/${own}.rels`, folder, read);
  const partOf = (type: string) => related.find((one) => one.type === type)?.target;
  const { sheets, is1904 } = workbook(main.target, read);
  let context: SheetContext | undefined;
  const texts = partOf("sharedStrings");
  const styles = partOf("styles");
  return sheets.flatMap(({ name, isHidden, id }) => {
    const part = related.find((one) => one.id === id && one.type === "worksheet");
    if (!part) return [];
    return [
      {
        name,
        isHidden,
        read: () => {
          context ??= {
            texts: texts !== undefined && archive.has(texts) ? sharedTexts(texts, read) : [],
            formats: styles !== undefined && archive.has(styles) ? numberFormats(styles, read) : [],
            is1904,
          };
          return { name, isHidden, ...readWorksheet(part.target, readRows, context) };
        },
      },
    ];
  });
}

interface Relation {
  readonly id: string | undefined;
  /** The last word of its type, which is the same in both kinds of the standard. */
  readonly type: string;
  readonly target: string;
}

function relations(name: string, folder: string, read: ReadPart): Relation[] {
  const found: Relation[] = [];
  read(name, {
    open(element, attributes) {
      if (element !== "Relationship" || attributes.TargetMode === "External") return;
      const type = attributes.Type ?? "";
      found.push({
        id: attributes.Id,
        type: type.slice(type.lastIndexOf("/") + 1),
        target: resolve(folder, attributes.Target ?? ""),
      });
    },
  });
  return found;
}

function resolve(folder: string, target: string): string {
  const path = target.startsWith("/") ? target : `${folder}${target}`;
  const parts: string[] = [];
  for (const part of path.split("/")) {
    if (part === "..") parts.pop();
    else if (part !== "" && part !== ".") parts.push(part);
  }
  return parts.join("/");
}

function workbook(name: string, read: ReadPart) {
  const sheets: { name: string; isHidden: boolean; id: string | undefined }[] = [];
  let is1904 = false;
  read(name, {
    open(element, attributes) {
      if (element === "workbookPr") is1904 = isTrue(attributes.date1904);
      if (element !== "sheet") return;
      const { name = "", state = "visible" } = attributes;
      sheets.push({ name, isHidden: state !== "visible", id: attributeOf(attributes, "id") });
    },
  });
  return { sheets, is1904 };
}

/** Texts that cells refer to by number; reading aids for Japanese (`rPh`) are no part of them. */
function sharedTexts(name: string, read: ReadPart): string[] {
  const texts: string[] = [];
  const reader = new RichText();
  read(name, {
    open(element) {
      if (element === "si") reader.clear();
      else reader.open(element);
    },
    close(element) {
      if (element === "si") texts.push(reader.text);
      else reader.close(element);
    },
    text: (part) => reader.add(part),
  });
  return texts;
}

/** The number format of each style that cells refer to; undefined where it shows the plain number. */
function numberFormats(name: string, read: ReadPart): (string | undefined)[] {
  const codes = new Map<number, string>();
  const formats: (string | undefined)[] = [];
  let inCells = false;
  const style = (attributes: Attributes) => {
    const id = Number(attributes.numFmtId ?? 0);
    formats.push(codes.get(id) ?? builtInFormat(id));
  };
  read(name, {
    open(element, attributes) {
      if (element === "cellXfs") inCells = true;
      else if (element === "xf" && inCells) style(attributes);
      else if (element === "numFmt" && attributes.formatCode !== undefined) {
        codes.set(Number(attributes.numFmtId), attributes.formatCode);
      }
    },
    close(element) {
      if (element === "cellXfs") inCells = false;
    },
  });
  return formats.map((code) =>
    code === undefined || /^(?:general|@)$/i.test(code) ? undefined : code,
  );
}
