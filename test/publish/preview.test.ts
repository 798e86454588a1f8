/** The preview: the same as the published page, and kept current by patches. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { load } from "cheerio";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { PictureSource } from "../../server/src/publish/fill/filler.ts";
import type { SentBlock, Splice } from "../../server/src/publish/preview/patch.ts";
import { GuidePreview } from "../../server/src/publish/preview/preview.ts";
import { Service } from "../../server/src/service.ts";
import { MemoryFiles } from "../memoryFiles.ts";
import { type Edit, editsOf, hostileText } from "../syntax/hostile.ts";
import { publishSample, seen } from "./published.ts";

const FOLDER = "file:///kit/";
const GUIDE = `${FOLDER}guide.md`;
const PICTURES: PictureSource = {
  source: (_, url) => (url.includes("gone") ? undefined : `picture:${url}`),
};
const LIST = `Designator,Quantity,Value,Footprint,Description
"R1–R4, R7",5,4k7,R_Axial_DIN0207_L6.3mm_D2.5mm,
"R5,R6",2,10k,R_Axial_DIN0207_L6.3mm_D2.5mm,
"C1,3,6",3,100n,C_Disc_D5.0mm_W2.5mm_P5.00mm,
"Q1,Q2,Q5",4,BC547,TO-92,
,6,M3x10,,Screw M3x10
`;
const HEAD = `---
title: T
parts: parts.csv
supply: { VEE: -12 V }
figures: { half: VEE / 2 }
---

`;

/** A guide in an editor with its preview beside it. */
class Desk {
  readonly service: Service;
  readonly preview = new GuidePreview();
  /** What the panel holds. */
  readonly panel: SentBlock[] = [];
  #version = 0;

  constructor(files: Readonly<Record<string, string>>) {
    const memory = new MemoryFiles();
    for (const [name, text] of Object.entries(files)) memory.set(FOLDER + name, text);
    this.service = new Service(memory);
  }

  async open(text: string): Promise<this> {
    this.service.open(GUIDE, 0, text);
    await this.refresh();
    return this;
  }

  edit(start: number, end: number, text: string): void {
    this.service.edit(GUIDE, ++this.#version, [{ span: { start, end }, text }]);
  }

  /** Gives the patch that the panel got. */
  async refresh(): Promise<Splice[]> {
    await this.service.settle();
    const [guide] = this.service.guidesOf(GUIDE);
    if (!guide) return [];
    for (const _ of this.preview.follow(guide, PICTURES)) void _;
    const splices = this.preview.takePatch();
    for (const { at, remove, add } of splices) this.panel.splice(at, remove, ...add);
    return splices;
  }

  /** What the panel shows, ids of fields aside, which differ from preview to preview. */
  seen(): string[] {
    return this.panel.map(({ place, html }) => `${place} ${html.replace(/\b[pn]\d+-\d+/g, "id")}`);
  }
}

async function expectLaw(
  files: Readonly<Record<string, string>>,
  start: string,
  edits: readonly Edit[],
): Promise<void> {
  const desk = await new Desk(files).open(start);
  let text = start;
  for (const [index, { at, remove, insert }] of edits.entries()) {
    const from = Math.round(at * text.length);
    const to = Math.min(text.length, from + remove);
    text = text.slice(0, from) + insert + text.slice(to);
    desk.edit(from, to, insert);
    if (index % 3 !== 1) await desk.refresh();
  }
  await desk.refresh();
  const [guide] = desk.service.guidesOf(GUIDE);
  if (!guide) return;
  const fresh = await new Desk(files).open(text);
  expect(desk.seen()).toEqual(fresh.seen());
  const ids = desk.panel.map(({ id }) => id);
  expect(new Set(ids).size).toBe(ids.length);
}

describe("a preview after random edits shows what a fresh one shows", () => {
  test("of hostile text, 800 times", async () => {
    await fc.assert(
      fc.asyncProperty(hostileText, editsOf(5), (text, edits) =>
        expectLaw({ "parts.csv": LIST }, HEAD + text, edits),
      ),
      { numRuns: 800 },
    );
  }, 240_000);

  const LINKED =
    "Fit [R1] as [told][here], then see [^a] and [^b].\n\n[here]: sub.md\n[^a]: First [see: x].\n[^b]: Second.\n\n";
  const whole = `${HEAD}# T\n\n## A\n\n1. ${LINKED}2. Fit [R2–R4]. [#x]\n\n## B\n\n1. Fit [rest of R].\n2. ![a](a.png) ![b](gone.png) [see: x] {VEE} [tool: vice]\n\n${LINKED}`;

  test.each([
    ["a link leads elsewhere", "sub.md", "other.md"],
    ["a footnote is named earlier", "see [^a] and [^b]", "see [^b] and [^a]"],
    ["a footnote is reworded", "Second.", "Another."],
    ["a label moves to another step", "[R2–R4]. [#x]", "[R2–R4]."],
    ["a set means other parts", "[R2–R4]", "[R2]"],
    ["a part is first fitted elsewhere", "Fit [R1]", "Fit [C1]"],
    ["a rail changes", "-12 V", "-15 V"],
    ["the title changes", "title: T", "title: Heron"],
    ["a heading is reworded", "## B", "## Bridge"],
    ["a stage comes before", "## A", "## Z\n\n1. Fit [Q1].\n\n## A"],
    ["a tool is another", "vice", "file"],
    ["a height is given", "supply:", "heights: { R1: 3 mm }\nsupply:"],
    ["the language changes", "title: T", "title: T\nlanguage: de"],
  ])("when %s", async (_, before, after) => {
    const at = whole.indexOf(before) / whole.length;
    expect(at).toBeGreaterThan(0);
    await expectLaw({ "parts.csv": LIST }, whole, [{ at, remove: before.length, insert: after }]);
  });
});

describe("a patch holds only what has changed", () => {
  const steps = (from: number, to: number) =>
    Array.from(
      { length: to - from + 1 },
      (_, i) => `${i + 1}. Solder part ${from + i} with care.\n`,
    );
  const text = `${HEAD}## A\n\n${steps(1, 30).join("")}\n## B\n\n${steps(31, 60).join("")}`;

  test("of a letter typed: its step", async () => {
    const desk = await new Desk({ "parts.csv": LIST }).open(text);
    for (const word of ["part 7 ", "part 41 "]) {
      const at = desk.service.text(GUIDE)!.indexOf(word);
      desk.edit(at, at, "x");
      const splices = await desk.refresh();
      expect(splices.map(({ remove, add }) => [remove, add.length])).toEqual([[1, 1]]);
      expect(splices[0]!.add[0]!.html).toContain(`x${word}`);
    }
  });

  test("of a step moved down: that step and those numbered anew", async () => {
    const desk = await new Desk({ "parts.csv": LIST }).open(text);
    const at = desk.service.text(GUIDE)!.indexOf("60. Solder");
    expect(at).toBe(-1);
    const last = text.indexOf("29. Solder part 59");
    desk.edit(last, text.length, "29. Solder part 60 with care.\n30. Solder part 59 with care.\n");
    const sent = (await desk.refresh()).flatMap(({ add }) => add);
    expect(sent.map(({ html }) => /part \d+/.exec(html)?.[0])).toEqual(["part 60", "part 59"]);
  });

  test("of white space behind the guide: nothing", async () => {
    const desk = await new Desk({ "parts.csv": LIST }).open(text);
    desk.edit(text.length, text.length, "\n");
    expect(await desk.refresh()).toEqual([]);
  });
});

describe.each([
  ["heron", "heron.md"],
  ["constructs", "guide.md"],
])("the preview of %s", (folder, name) => {
  test("says what the published page says, in the same order", async () => {
    const path = join(import.meta.dirname, "../../samples", folder);
    const names = readdirSync(path).filter((one) => /\.(?:md|csv)$/.test(one));
    const memory = new MemoryFiles();
    for (const one of names) memory.set(FOLDER + one, readFileSync(join(path, one), "utf8"));
    const service = new Service(memory);
    service.follow(FOLDER + name);
    await service.settle();
    const preview = new GuidePreview();
    const { page } = await publishSample(folder, name, ["guide"]);
    const $ = page();
    $(".record, .running, header, script").remove();
    for (const _ of preview.follow(service.guidesOf(FOLDER + name)[0]!, PICTURES)) void _;
    const shown = load(preview.blocks.map(({ html }) => html).join("\n"));
    expect(seen(shown("body").text())).toBe(seen($("main").text()));
    expect(shown("label.tick").length).toBe($("label.tick").length);
    expect(shown(".note").length).toBe($(".note").length);
  });
});
