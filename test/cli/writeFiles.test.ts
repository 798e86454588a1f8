/** Files of a publication on disk: all of them or none. */
import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  readlinkSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { writeFiles } from "../../server/src/cli/writeFiles.ts";

const FILES = ["a.csv", "b.csv", "c.csv"].map((name) => ({
  name,
  content: () => `new ${name}`,
  mark: "new",
}));

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "publication-"));
});
afterEach(() => rmSync(folder, { recursive: true }));

const read = (name: string) => readFileSync(join(folder, name), "utf8");

test("a file that cannot be replaced leaves those before it as they were", async () => {
  writeFileSync(join(folder, "a.csv"), "old a.csv");
  mkdirSync(join(folder, "c.csv/full"), { recursive: true });
  await expect(writeFiles(folder, FILES)).rejects.toThrow();
  expect(readdirSync(folder).sort()).toEqual(["a.csv", "c.csv"]);
  expect(read("a.csv")).toBe("old a.csv");
});

test.skipIf(process.platform === "win32")("a link that was replaced is a link again", async () => {
  writeFileSync(join(folder, "elsewhere"), "mine");
  symlinkSync("elsewhere", join(folder, "a.csv"));
  mkdirSync(join(folder, "c.csv/full"), { recursive: true });
  await expect(writeFiles(folder, FILES)).rejects.toThrow();
  expect(readlinkSync(join(folder, "a.csv"))).toBe("elsewhere");
  expect(read("elsewhere")).toBe("mine");
});

test("all are written over the old ones, and nothing else stays behind", async () => {
  writeFileSync(join(folder, "a.csv"), "old a.csv");
  await writeFiles(folder, FILES);
  expect(readdirSync(folder).sort()).toEqual(["a.csv", "b.csv", "c.csv"]);
  expect(read("a.csv")).toBe("new a.csv");
});
