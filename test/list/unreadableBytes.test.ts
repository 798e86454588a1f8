/** Files from which no list can be read: a guide that names one shows a single finding, on its key. */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { Service } from "../../server/src/service.ts";
import { MemoryFiles } from "../memoryFiles.ts";
import { utf16 } from "./reading.ts";

const workbook = (file: string) =>
  new Uint8Array(readFileSync(`${import.meta.dirname}/workbooks/${file}`));
const latin = (text: string) => Uint8Array.from(text, (letter) => letter.charCodeAt(0));
/** Compound File Binary Format, as .xls has it. */
const COMPOUND = "\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1";

async function found(list: string, bytes: Uint8Array | string | undefined) {
  const files = new MemoryFiles();
  if (bytes) files.set(`file:///kit/${list}`, bytes);
  files.set("file:///kit/guide.md", `---\nparts: ${list}\n---\n\n## Board\n\n1. Fit [R1].\n`);
  const service = new Service(files);
  service.follow("file:///kit/guide.md");
  await service.settle();
  return service
    .takeChanges()
    .flatMap(({ uri, diagnoses }) => diagnoses.map(({ code, message }) => [uri, code, message]));
}

const ON_KEY = (says: string) => [
  ["file:///kit/guide.md", "unreadable-list", expect.stringContaining(says)],
];

describe("a list that cannot be read is one finding on the guide's key", () => {
  test.each([
    ["missing.csv", undefined, "no file `missing.csv`"],
    ["empty.csv", new Uint8Array(), "empty"],
    ["binary.csv", latin("\x00\x01\x02\x03R1\x00\x00"), "a binary file"],
    ["old.xls", latin(`${COMPOUND}${"\0".repeat(600)}`), "older binary kind (.xls"],
    ["page.pdf", latin("%PDF-1.7 R1"), "a PDF document"],
    ["locked.xlsx", workbook("locked.xlsx"), "locked with a password"],
    ["locked.ods", workbook("locked.ods"), "locked with a password"],
    ["cut.xlsx", workbook("wren.xlsx").subarray(0, 4000), "damaged or cut off"],
    ["cut.ods", workbook("wren.ods").subarray(0, 4000), "damaged or cut off"],
    ["wren.xlsx#Nope", undefined, "no file"],
  ])("%s", async (list, bytes, says) => {
    expect(await found(list, bytes)).toEqual(ON_KEY(says));
  });
});

test("XML that declares entities is one finding in it, in any encoding", async () => {
  const text = `<?xml version="1.0"?><!DOCTYPE a [<!ENTITY x "ha">]><export><components><comp ref="&x;"/></components></export>`;
  for (const bytes of [latin(text), utf16(text)]) {
    expect(await found("kit.xml", bytes)).toEqual([
      ["file:///kit/kit.xml", "unreadable-list", expect.stringContaining("declares entities")],
    ]);
  }
});
