/** Files and guides that the user names: what is meant, and what is said where they cannot be used. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { UsageError } from "../../server/src/cli/arguments.ts";
import { textOf } from "../../server/src/cli/namedFile.ts";
import { oneGuide } from "../../server/src/cli/oneGuide.ts";

const root = mkdtempSync(join(tmpdir(), "named-"));
afterAll(() => rmSync(root, { recursive: true }));

const GUIDE = "---\nparts: parts.csv\n---\n\n## Board\n\n1. Solder [R1].\n";
const FILES: Readonly<Record<string, string | Uint8Array>> = {
  "one/guide.md": GUIDE,
  "one/parts.csv": "Designator,Value\nR1,4k7\n",
  "one/my parts.csv": "Designator,Value\nR1,4k7\n",
  "one/notes.md": "# Notes\n",
  "two/a.md": GUIDE,
  "two/b.md": GUIDE,
  "none/notes.md": "# Notes\n",
  "cues.vtt": "WEBVTT\n",
  "picture.vtt": new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
};
for (const [name, content] of Object.entries(FILES)) {
  mkdirSync(join(root, name, ".."), { recursive: true });
  writeFileSync(join(root, name), content);
}

/** What is said of it; fails where it is no fault of the user's. */
async function refused(wish: Promise<unknown>): Promise<string> {
  const error = await wish.then(
    () => undefined,
    (reason: unknown) => reason,
  );
  expect(error).toBeInstanceOf(UsageError);
  return (error as UsageError).message;
}

describe("a guide", () => {
  test.each(["one/guide.md", "one"])("is found as %s", async (name) => {
    const { checked } = await oneGuide(name, root, false);
    expect(checked.guide.pages[0]!.uri).toMatch(/\/one\/guide\.md$/);
    expect(checked.guide.parts.map((part) => part.name)).toEqual(["R1"]);
  });

  test.each([
    ["two", "There are several guides in `two`. Name one."],
    ["none", "There is no guide in `none`"],
    ["one/notes.md", "`one/notes.md` is no guide: its front matter has no key `parts`."],
    ["one/parts.csv", "`kitquill list parts one/parts.csv` shows how it is read"],
    ["one/my parts.csv", '`kitquill list parts "one/my parts.csv"` shows how it is read'],
    ["gone.md", "There is no file or folder `gone.md`"],
  ])("is not found as %s", async (name, message) => {
    expect(await refused(oneGuide(name, root, false))).toContain(message);
  });
});

describe("a file", () => {
  test("gives its text", async () => {
    expect(await textOf("cues.vtt", root)).toBe("WEBVTT\n");
  });

  test.each([
    ["gone.vtt", "There is no file `gone.vtt`."],
    ["one", "`one` is a folder."],
    ["picture.vtt", "`picture.vtt`: This is a PNG picture, not text"],
  ])("is refused as %s", async (name, message) => {
    expect(await refused(textOf(name, root))).toContain(message);
  });
});
