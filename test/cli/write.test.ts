import {
  chmodSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeEach, expect, test } from "vitest";
import { replaceFile } from "../../server/src/cli/write.ts";

const root = mkdtempSync(join(tmpdir(), "write-"));
afterAll(() => rmSync(root, { recursive: true }));
const path = join(root, "guide.md");
const bytes = (text: string) => new TextEncoder().encode(text);

beforeEach(() => writeFileSync(path, "before"));

test("a file is replaced, and keeps its permissions", async () => {
  chmodSync(path, 0o640);
  await replaceFile(path, bytes("before"), bytes("after"));
  expect(readFileSync(path, "utf8")).toBe("after");
  expect(statSync(path).mode & 0o777).toBe(0o640);
  expect(readdirSync(root)).toEqual(["guide.md"]);
});

test("a file that someone else changed meanwhile is left alone", async () => {
  await expect(replaceFile(path, bytes("earlier"), bytes("after"))).rejects.toThrow(
    "changed by someone",
  );
  expect(readFileSync(path, "utf8")).toBe("before");
  expect(readdirSync(root)).toEqual(["guide.md"]);
});

test("a link stays a link", async () => {
  mkdirSync(join(root, "links"));
  const link = join(root, "links", "link.md");
  symlinkSync(path, link);
  await replaceFile(link, bytes("before"), bytes("after"));
  expect(lstatSync(link).isSymbolicLink()).toBe(true);
  expect(readFileSync(path, "utf8")).toBe("after");
  rmSync(join(root, "links"), { recursive: true });
});
