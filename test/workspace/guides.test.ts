import { execFileSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, relative } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { URI } from "vscode-uri";
import { DiskFiles } from "../../server/src/workspace/disk.ts";
import { FileError } from "../../server/src/workspace/files.ts";
import { findGuides } from "../../server/src/workspace/guides.ts";
import { MemoryFiles } from "../memoryFiles.ts";

const guide = "---\nparts: list.csv\n---\n";

async function find(files: Record<string, string | FileError>, folder = "kits"): Promise<string[]> {
  const memory = new MemoryFiles();
  for (const [path, content] of Object.entries(files)) memory.set(`file:///${path}`, content);
  const found: string[] = [];
  for await (const { uri, problem } of findGuides(memory, `file:///${folder}`)) {
    found.push(uri.slice("file:///".length) + (problem ? ` ! ${problem}` : ""));
  }
  return found;
}

describe("guides below a folder", () => {
  test("are Markdown files whose front matter has parts, in the order of their paths", async () => {
    const found = await find({
      "kits/b/guide.md": guide,
      "kits/a.markdown": `\uFEFF${guide}`,
      "kits/README.MD": guide,
      "kits/page.md": "---\ntitle: a page\n---\n",
      "kits/notes.txt": guide,
      "kits/list.csv": guide,
      "elsewhere/guide.md": guide,
    });
    expect(found).toEqual(["kits/README.MD", "kits/a.markdown", "kits/b/guide.md"]);
  });

  test("leave out node_modules, .git and what .gitignore says, at every level", async () => {
    const found = await find({
      "kits/.gitignore": "build/\n*.draft.md\n",
      "kits/node_modules/x/guide.md": guide,
      "kits/.git/guide.md": guide,
      "kits/build/guide.md": guide,
      "kits/one.draft.md": guide,
      "kits/sub/.gitignore": "!two.draft.md\nlocal.md\n",
      "kits/sub/two.draft.md": guide,
      "kits/sub/local.md": guide,
      "kits/local.md": guide,
    });
    expect(found).toEqual(["kits/local.md", "kits/sub/two.draft.md"]);
  });

  test("respect the rules of the repository around the folder", async () => {
    const files = {
      "repo/.git/HEAD": "",
      "repo/.gitignore": "/docs/old/\nsecret.md\n",
      "repo/docs/.gitignore": "!secret.md\ndraft.md\n",
      "repo/docs/kits/guide.md": guide,
      "repo/docs/kits/secret.md": guide,
      "repo/docs/kits/draft.md": guide,
      "repo/docs/old/guide.md": guide,
      ".gitignore": "*.md",
    };
    expect(await find(files, "repo/docs/kits")).toEqual([
      "repo/docs/kits/guide.md",
      "repo/docs/kits/secret.md",
    ]);
    expect(await find(files, "repo/docs")).toHaveLength(2);
    expect(await find(files, "repo/docs/old"), "a folder that is named is looked into").toEqual([
      "repo/docs/old/guide.md",
    ]);
  });

  test("that cannot be read are reported and stop nothing", async () => {
    const found = await find({
      "kits/a.md": new FileError("denied", "permission is denied."),
      "kits/b.md": guide,
    });
    expect(found).toEqual(["kits/a.md ! permission is denied.", "kits/b.md"]);
  });
});

describe("on disk", () => {
  const root = mkdtempSync(join(tmpdir(), "guides-"));
  afterAll(() => rmSync(root, { recursive: true }));

  function write(path: string, text: string): void {
    mkdirSync(dirname(join(root, path)), { recursive: true });
    writeFileSync(join(root, path), text);
  }

  test("the same files are found as git lists", async () => {
    write(
      ".gitignore",
      "build/\n/top.md\n*.tmp.md\n!keep.tmp.md\ndoc/**/deep.md\nsp\\ ace.md\n# no\n",
    );
    write("sub/.gitignore", "*.md\n!yes.md\n/inner/\n");
    const names = [
      ..."top.md keep.tmp.md x.tmp.md build/a.md doc/deep.md doc/a/b/deep.md doc/a/b/shallow.md".split(
        " ",
      ),
      ..."sub/no.md sub/yes.md sub/inner/yes.md sub/other/yes.md sub/other/top.md sub/build/yes.md".split(
        " ",
      ),
      "sp ace.md",
      "ä/ö.md",
    ];
    for (const name of names) write(name, guide);
    symlinkSync(root, join(root, "doc", "loop"));
    execFileSync("git", ["init", "-q"], { cwd: root });
    // Outside source: git itself.
    const listed = execFileSync("git", ["ls-files", "-zo", "--exclude-standard", "--", "*.md"], {
      cwd: root,
      encoding: "utf8",
    });
    const expected = listed.split("\0").filter((name) => name !== "");
    const found: string[] = [];
    for await (const { uri } of findGuides(new DiskFiles(), URI.file(root).toString())) {
      found.push(relative(root, URI.parse(uri).fsPath));
    }
    expect(expected.length).toBeGreaterThan(4);
    expect(found.sort()).toEqual(expected.sort());
  });
});
