/** A path in the front matter that names no file: what is said and offered, and how it follows the folder. */
import { describe, expect, test } from "vitest";
import { DEFAULT_SETTINGS, Service } from "../../server/src/service.ts";
import { applyEdits } from "../../server/src/text/span.ts";
import { MemoryFiles } from "../memoryFiles.ts";

const GUIDE = "file:///k/wren/guide.md";
const LIST = "Designator,Value\nR1,10k\n";

class Kit {
  readonly files = new MemoryFiles();
  readonly service: Service;
  readonly text: string;

  /** `front`: a line of the front matter; `files`: paths from the folder that is open. */
  constructor(front: string, files: readonly string[]) {
    for (const path of files) this.files.set(`file:///k/${path}`, LIST);
    this.text = `---\n${front}\n---\n\n## A\n\n1. Solder. [R1]\n`;
    this.service = new Service(this.files, { ...DEFAULT_SETTINGS, folders: ["file:///k"] });
    this.service.open(GUIDE, 0, this.text);
  }

  async found() {
    await this.service.settle();
    this.service.takeChanges();
    const codes = ["unreadable-list", "front-matter"];
    return this.service.diagnoses(GUIDE).filter(({ code }) => codes.includes(code));
  }

  async said(): Promise<string[]> {
    return (await this.found()).map(({ message }) => message);
  }

  /** The guide's second line after each of the fixes. */
  async mended(): Promise<(string | undefined)[]> {
    const fixes = (await this.found()).flatMap((one) => one.fixes());
    return fixes.map((fix) => applyEdits(this.text, fix.edits[0]!.edits).split("\n")[1]);
  }

  change(path: string, content: string | undefined): void {
    this.files.set(`file:///k/${path}`, content);
    this.service.changedOutside(`file:///k/${path}`);
  }
}

describe("A path that names no file", () => {
  test.each([
    ["parts: wren-part.csv", "wren/wren-parts.csv", "wren-parts.csv"],
    ["parts: Wren_Parts.CSV", "wren/wren-parts.csv", "wren-parts.csv"],
    ["parts: wren-parts.csv", "wren/wren-parts.xlsx", "wren-parts.xlsx"],
    ['parts: "lists/wren.csv"', "wren/wren.csv", "wren.csv"],
    ["parts: wren.csv", "wren/lists/other.csv", undefined],
    ["parts: ../list/wren.csv", "list/wrens.csv", "../list/wrens.csv"],
    ["parts: { main: wren-mian.csv }", "wren/wren-main.csv", "wren-main.csv"],
    ["parts: wern.xlsx#Board", "wren/wren.xlsx", '"wren.xlsx#Board"'],
    ["parts: wren-part.csv", "wren/Wren: parts.csv", '"Wren: parts.csv"'],
    ["parts: 'wren-part.csv'", "wren/wren parts'.csv", "wren parts''.csv"],
  ])("%s where %s lies: %s", async (front, file, meant) => {
    const kit = new Kit(front, [file]);
    const [message] = await kit.said();
    expect(message).toMatch(/^There is no file `/);
    expect(message?.includes("Did you mean")).toBe(meant !== undefined);
    const before = front.replace(/^parts: (?:\{ main: )?["']?([^"'} ]*).*$/, "$1");
    expect(await kit.mended()).toEqual(meant === undefined ? [] : [front.replace(before, meant)]);
  });

  test("tells the few lists beside the guide where none has a name like it", async () => {
    const kit = new Kit("parts: parts.csv", ["wren/kestrel.csv", "wren/bench.tsv", "wren/a.svg"]);
    expect(await kit.said()).toEqual([
      "There is no file `parts.csv`. The path counts from the guide's folder. In that folder: `bench.tsv`, `kestrel.csv`.",
    ]);
    expect(await kit.mended()).toEqual(["parts: bench.tsv", "parts: kestrel.csv"]);
  });

  test("is none that the guide names already", async () => {
    const kit = new Kit("parts: { main: a.csv, psu: b.csv }", ["wren/a.csv"]);
    expect(await kit.said()).toEqual([
      "There is no file `b.csv`. The path counts from the guide's folder.",
    ]);
  });

  test("is neither the guide nor a picture", async () => {
    const kit = new Kit("parts: guide.csv", ["wren/guide.svg"]);
    expect(await kit.said()).toEqual([
      "There is no file `guide.csv`. The path counts from the guide's folder.",
    ]);
  });

  test("may be a further page", async () => {
    const kit = new Kit("parts: p.csv\npages: [powr.md]", ["wren/p.csv", "wren/power.md"]);
    expect(await kit.said()).toEqual(["There is no file `powr.md`. Did you mean `power.md`?"]);
  });

  test("with backslashes is offered with slashes", async () => {
    const kit = new Kit("parts: lists\\wren.csv", ["wren/lists/wren.csv"]);
    expect(await kit.mended()).toEqual(["parts: lists/wren.csv"]);
  });
});

test("What is said follows the files of the folder as they come and go", async () => {
  const kit = new Kit("parts: wren-part.csv", []);
  const none = "There is no file `wren-part.csv`. The path counts from the guide's folder.";
  expect(await kit.said()).toEqual([none]);
  kit.change("wren/wren-parts.csv", LIST);
  expect(await kit.said()).toEqual([
    "There is no file `wren-part.csv`. Did you mean `wren-parts.csv`?",
  ]);
  kit.change("wren/wren-parts.csv", undefined);
  expect(await kit.said()).toEqual([none]);
  kit.change("wren/wren-part.csv", LIST);
  expect(await kit.said()).toEqual([]);
});
