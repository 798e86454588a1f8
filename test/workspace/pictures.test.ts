/** Pictures of a guide: which files are looked for, and how the findings follow them. */
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { URI } from "vscode-uri";
import { DEFAULT_SETTINGS, Service } from "../../server/src/service.ts";
import { DiskFiles } from "../../server/src/workspace/disk.ts";
import { Pictures } from "../../server/src/workspace/pictures.ts";
import { Sources } from "../../server/src/workspace/sources.ts";
import { kit, messages } from "../checks/kit.ts";
import { checkFixture } from "../fixture.ts";
import { MemoryFiles } from "../memoryFiles.ts";

const LIST = "Designator,Value\nR1,10k\n";
const GUIDE = "file:///k/docs/g.md";

/** Whether each address is said to be missing once it has been looked for. */
async function missing(addresses: readonly string[], files: MemoryFiles): Promise<boolean[]> {
  const pictures = new Pictures({ sources: new Sources(files), folders: ["file:///k"] });
  const ask = () => addresses.map((address) => pictures.isMissing(GUIDE, address));
  expect(ask()).toEqual(addresses.map(() => false));
  await pictures.lookUp();
  return ask();
}

class Followed {
  readonly files = new MemoryFiles({ "file:///k/p.csv": LIST });
  readonly service = new Service(this.files, { ...DEFAULT_SETTINGS, folders: ["file:///k"] });
  text: string;
  #version = 0;

  constructor(step: string) {
    this.text = `---\nparts: p.csv\n---\n\n## A\n\n1. ${step}\n`;
    this.service.open("file:///k/g.md", 0, this.text);
  }

  replace(from: string, to: string): void {
    const start = this.text.indexOf(from);
    this.service.edit("file:///k/g.md", ++this.#version, [
      { span: { start, end: start + from.length }, text: to },
    ]);
    this.text = this.text.replace(from, to);
  }

  async found(): Promise<string[]> {
    await this.service.settle();
    this.service.takeChanges();
    const own = this.service.diagnoses("file:///k/g.md");
    return own.filter(({ code }) => code === "step-picture").map(({ severity }) => severity);
  }
}

describe("A picture's address", () => {
  test("counts from its page, with percent signs decoded and query and fragment left out", async () => {
    const files = new MemoryFiles();
    for (const name of ["docs/a b.png", "docs/c#d.png", "pics/e.svg", "docs/50%.png"]) {
      files.set(URI.from({ scheme: "file", path: `/k/${name}` }).toString(), "x");
    }
    const there = ["a%20b.png", "./a b.png", "c%23d.png", "../pics/e.svg?x=1#y", "50%.png"];
    expect(await missing(there, files)).toEqual(there.map(() => false));
    const gone = ["a.png", "c#d.png", "e.svg", "pics/e.svg"];
    expect(await missing(gone, files)).toEqual(gone.map(() => true));
  });

  test("that leads elsewhere is not looked for", async () => {
    const elsewhere = [
      "https://example.com/a.png",
      "data:image/png;base64,xx",
      "../../a.png",
      "/etc/a.png",
      "#part",
      "",
    ];
    expect(await missing(elsewhere, new MemoryFiles())).toEqual(elsewhere.map(() => false));
  });
});

describe("The finding", () => {
  test("comes and goes with the file", async () => {
    const one = new Followed("Look. ![a](a.png)");
    expect(await one.found()).toEqual(["warning"]);
    one.files.set("file:///k/a.png", "x");
    expect(await one.found()).toEqual(["warning"]);
    one.service.changedOutside("file:///k/a.png");
    expect(await one.found()).toEqual([]);
    one.files.set("file:///k/a.png", undefined);
    one.service.changedOutside("file:///k/a.png");
    expect(await one.found()).toEqual(["warning"]);
  });

  test("comes and goes with the text", async () => {
    const one = new Followed("Look. ![a](a.png)");
    one.files.set("file:///k/b.png", "x");
    expect(await one.found()).toEqual(["warning"]);
    one.replace("a.png", "b.png");
    expect(await one.found()).toEqual([]);
    one.replace("[a]", "[]");
    expect(await one.found()).toEqual(["information"]);
    one.replace("b.png", "c.png");
    expect((await one.found()).sort()).toEqual(["information", "warning"]);
  });

  test("is not made by an edit that comes while files are looked for", async () => {
    const one = new Followed("Look. ![a](a.png)");
    const work = one.service.update();
    while (!(await work.next()).done) one.service.isDirty;
    one.replace("![a](a.png)", "No picture.");
    expect(await one.found()).toEqual([]);
  });

  test("comes for pictures in HTML, comments left out", async () => {
    const body = `## A

1. Look. <img src="a.png" alt="front" width=300> <img src='b.png'>

<!-- <img src="c.png"> -->
<p><img alt="back" src=d.png></p>

2. \`<img src="e.png">\``;
    const found = await messages(kit(body, LIST), "step-picture");
    expect(found.map((one) => /`(\S+)`|alternative text/.exec(one)![0])).toEqual([
      "`a.png`",
      "alternative text",
      "`b.png`",
      "`d.png`",
    ]);
  });

  test("asks for a text of pictures by reference too", async () => {
    const body = "## A\n\n1. ![][p] and ![front][p]\n\n[p]: nowhere.png";
    const { found } = await checkFixture(kit(body, LIST), "step-picture");
    expect(found.map(({ severity }) => severity)).toEqual(["information", "warning", "warning"]);
  });

  test("are looked for by reference in all its forms, the first definition counting", async () => {
    const body =
      "## A\n\n1. ![front][p], ![p][] and ![P]\n2. ![no label][q]\n\n[p]: a.png 'title'\n\n## B\n\n[p]: b.png";
    const found = await messages(kit(body, LIST), "step-picture");
    expect(found.map((one) => /`(\S+)`/.exec(one)![1])).toEqual(["a.png", "a.png", "a.png"]);
  });

  test("follow their definition", async () => {
    const one = new Followed("![front][p]\n\n[p]: a.png");
    expect(await one.found()).toEqual(["warning"]);
    one.files.set("file:///k/b.png", "x");
    one.replace("a.png", "b.png");
    expect(await one.found()).toEqual([]);
    one.replace("b.png", "c.png");
    expect(await one.found()).toEqual(["warning"]);
    one.replace("[p]: ", "[q]: ");
    expect(await one.found()).toEqual([]);
  });
});

describe("Files on disk", () => {
  const folder = mkdtempSync(join(tmpdir(), "pictures-"));
  afterAll(() => rmSync(folder, { recursive: true }));

  test("are there or not; folders and broken links are no files", async () => {
    writeFileSync(join(folder, "a.png"), "x");
    mkdirSync(join(folder, "b.png"));
    symlinkSync(join(folder, "nowhere"), join(folder, "c.png"));
    symlinkSync(join(folder, "d.png"), join(folder, "d.png"));
    const files = new DiskFiles();
    const names = ["a.png", "b.png", "c.png", "d.png", "e.png", "a.png/f.png"];
    const found = names.map((name) => files.exists(URI.file(join(folder, name)).toString()));
    expect(await Promise.all(found)).toEqual([true, false, false, false, false, false]);
    expect(await files.exists("untitled:a.png")).toBe(false);
  });
});
