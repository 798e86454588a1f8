/**
 * Files that another program has open. What Windows answers then cannot be had elsewhere, so the system
 * is played: a sharing violation is EBUSY in Node, and on some network drives EACCES or EPERM.
 */
import { mkdtempSync, promises, rmSync, writeFileSync } from "node:fs";
import { syncBuiltinESMExports } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, afterEach, describe, expect, test } from "vitest";
import { URI } from "vscode-uri";
import { Service } from "../../server/src/service.ts";
import { DiskFiles } from "../../server/src/workspace/disk.ts";
import { markedFile } from "../../server/src/workspace/openElsewhere.ts";

/** What the system answers when a workbook is opened; undefined when it lets it be. */
let refuses: string | undefined;
const { open } = promises;
promises.open = (path, ...more) => {
  if (!refuses || !/\.(?:xlsx|ods)$/.test(String(path))) return open(path, ...more);
  return Promise.reject(Object.assign(new Error(refuses), { code: refuses }));
};
syncBuiltinESMExports();
afterAll(() => {
  promises.open = open;
  syncBuiltinESMExports();
});

const folder = mkdtempSync(join(tmpdir(), "open-"));
afterAll(() => rmSync(folder, { recursive: true }));
afterEach(() => {
  refuses = undefined;
});

/** What a guide in a folder of its own shows of the list. */
async function found(list: string, code: string, mark?: string) {
  const kit = mkdtempSync(join(folder, "kit-"));
  const uri = URI.file(join(kit, "guide.md")).toString();
  writeFileSync(join(kit, "guide.md"), `---\nparts: ${list}\n---\n\n## Board\n\n1. Fit [R1].\n`);
  writeFileSync(join(kit, list), "PK");
  if (mark) writeFileSync(join(kit, mark), "");
  refuses = code;
  const service = new Service(new DiskFiles([URI.file(kit).toString()]));
  service.follow(uri);
  await service.settle();
  const diagnoses = service.takeChanges().flatMap((change) => change.diagnoses);
  return diagnoses.map(({ code, message }) => `${code} ${message}`);
}

const HELD = (name: string) => [
  `unreadable-list \`${name}\` is held by another program. Save it there and close it; it is then read by itself.`,
];

describe("a workbook that is open elsewhere is one finding", () => {
  test.each([
    ["kit.xlsx", "EBUSY", undefined],
    ["kit.xlsx", "EACCES", "~$kit.xlsx"],
    ["kit.xlsx", "EPERM", ".~lock.kit.xlsx#"],
    ["kit.ods", "EACCES", ".~lock.kit.ods#"],
  ])("%s, %s, with %s beside it", async (list, code, mark) => {
    expect(await found(list, code, mark)).toEqual(HELD(list));
  });

  test("but one that may not be read is told as such", async () => {
    expect(await found("kit.xlsx", "EACCES", "~$other.xlsx")).toEqual([
      "unreadable-list `kit.xlsx` may not be read: permission is denied.",
    ]);
  });
});

test.each([
  ["file:///kits/~$kit 1.xlsx", "file:///kits/kit%201.xlsx"],
  ["file:///kits/.~lock.kit.ods%23", "file:///kits/kit.ods"],
  ["file:///kits/kit.xlsx", undefined],
  ["file:///kits/~$", undefined],
])("%s tells of %s", (mark, file) => {
  expect(markedFile(mark)).toBe(file);
});
