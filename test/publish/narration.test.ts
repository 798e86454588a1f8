/** The narration: what is said, in which order and how long it takes, read back by another parser. */
import { describe, expect, test } from "vitest";
import { type ParsedCue, WebVTTParser } from "webvtt-parser";
import { narrationWords } from "../../server/src/publish/narration/words/words.ts";
import { LANGUAGES } from "../../server/src/text/language.ts";
import { fixture } from "../fixture.ts";
import { type Published, publishFiles, publishSample } from "./published.ts";

const LIST = `--- file: parts.csv
Designator,Quantity,Value,Footprint
"R1, R2",2,4k7,R_Axial_DIN0207_L6.3mm_D2.5mm
C1,1,100n,C_Disc_D5.0mm_W2.5mm_P5.00mm
L1,1,10u,
,4,M3x6,
`;

function narrate(body: string, head = "", rate?: number): Promise<Published> {
  const text = `---\ntitle: Wren\nparts: parts.csv\n${head}---\n${body}\n${LIST}`;
  return publishFiles(fixture(text).files, "guide.md", ["narration"], rate ? { rate } : {});
}

/** The cues as the parser of the format's editors reads them. */
function cuesOf(published: Published, name = "narration.vtt"): readonly ParsedCue[] {
  const { cues, errors } = new WebVTTParser().parse(published.text(name), modeOf(name));
  expect(errors).toEqual([]);
  return cues;
}

function modeOf(name: string) {
  return name.includes("chapters") ? "chapters" : undefined;
}

describe.each([
  ["heron", "heron.md"],
  ["constructs", "guide.md"],
])("the sample %s", (folder, file) => {
  test("is captions and chapters that the format's own parser takes", async () => {
    const published = await publishSample(folder, file, ["narration"]);
    const cues = cuesOf(published);
    const ids = cues.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const [index, { startTime, endTime, text }] of cues.entries()) {
      expect(endTime).toBeGreaterThan(startTime);
      expect(startTime).toBeGreaterThanOrEqual(cues[index - 1]?.endTime ?? 0);
      expect(text).not.toMatch(/[[{}\]|]|\*\*|undefined|NaN/);
    }
    const chapters = cuesOf(published, "narration-chapters.vtt");
    for (const { startTime, endTime, text } of chapters) {
      const first = cues.find((cue) => cue.startTime >= startTime - 0.0005)!;
      if (first.id.endsWith("title")) expect(first.text).toBe(text);
      expect(text).not.toBe("");
      expect(endTime).toBeGreaterThan(startTime);
    }
  });

  test("says every step once, in order, and names each part that it fits", async () => {
    const published = await publishSample(folder, file, ["narration"]);
    const said = new Map<string, string>();
    for (const { id, text } of cuesOf(published)) {
      const step = /^[\d.]+(?= \(|$)/.exec(id)?.[0];
      if (step) said.set(step, `${said.get(step) ?? ""} ${text}`);
    }
    const steps = published.guide.stages.flatMap((stage) => stage.steps);
    expect([...said.keys()]).toEqual(steps.map(({ number }) => number));
    for (const use of published.guide.parts.flatMap((part) => published.guide.uses(part))) {
      if (use.role !== "fit" || use.item.kind !== "part" || use.supply.kind !== "part") continue;
      expect(said.get(use.step.number)).toContain(use.supply.name);
    }
  });

  test("says each hazard note before the steps that follow it", async () => {
    const published = await publishSample(folder, file, ["narration"]);
    const order = cuesOf(published).map(({ id }) => id);
    for (const stage of published.guide.stages) {
      for (const { fact, stepsBefore } of stage.remarks) {
        if (fact.kind !== "note") continue;
        const next = stage.steps[stepsBefore];
        if (!next) continue;
        const at = (wanted: (id: string) => boolean) => order.findIndex(wanted);
        const note = at((id) => id.startsWith(`${stage.number} note`));
        expect(note).toBeGreaterThanOrEqual(0);
        expect(note).toBeLessThan(at((id) => id === next.number || id === `${next.number} (1)`));
      }
    }
  });
});

test("marks and figures are said as a reader sees them", async () => {
  const published = await narrate(
    "## A & B\n\n1. Fit [R1, R2 = 4k7] at {VCC / 10}, *flat* on the `PCB`. [tool: vice] [C1]\n2. Put [4 × M3x6][2 × M3]{U = 5 V}{I = 2 A} in. [#end]\n3. See [see: end].",
    "supply: { VCC: 10 V ± 10 % }\n",
  );
  expect(cuesOf(published).map(({ id, text }) => [id, text])).toEqual([
    ["1 title", "A &amp; B"],
    ["1.1 (1)", "Fit R1, R2, 4k7 at 1 volt, flat on the PCB."],
    ["1.1 (2)", "C1."],
    ["1.2", "Put 4 M3x6 2 M3 5 volts 2 amperes in."],
    ["1.3", "See 1.2."],
  ]);
  expect(published.text("narration.txt")).toContain("Needs: vice");
});

test("tables are for readers, but a row that is a step is said", async () => {
  const published = await narrate(
    "## A\n\n1. Look at the table.\n\n   | x | y |\n   |---|---|\n   | 1 | 2 |\n\n## B\n\n| Value | Fit |\n|---|---|\n| 4k7 | [R1] |\n",
  );
  expect(cuesOf(published).map(({ text }) => text)).toEqual([
    "A",
    "Look at the table.",
    "B",
    "4k7, R1",
  ]);
});

test("a section without steps is left out but for its hazard notes", async () => {
  const published = await narrate(
    "# Wren\n\nHello.\n\n## About\n\nProse.\n\n## Safety\n\nProse.\n\n> **WARNING: fumes.** Bad. Open the window.\n\n## A\n\nFirst words.\n\n1. Fit [R1].\n",
  );
  expect(cuesOf(published).map(({ text }) => text)).toEqual([
    "Safety",
    "WARNING: fumes.",
    "Bad.",
    "Open the window.",
    "A",
    "First words.",
    "Fit R1.",
  ]);
});

describe("times", () => {
  test("the rate is a setting, with a usual one for each language", async () => {
    const [slow, fast, usual] = await Promise.all(
      [60, 120, undefined].map((rate) => narrate("## A\n\n1. one two three four.", "", rate)),
    );
    const seconds = (published: Published) => {
      const { startTime, endTime } = cuesOf(published)[1]!;
      return endTime - startTime;
    };
    expect(seconds(slow!)).toBeCloseTo(4, 3);
    expect(seconds(fast!)).toBeCloseTo(2, 3);
    expect(seconds(usual!)).toBeCloseTo((4 / 125) * 60, 3);
    // Reading aloud in words a minute: Trauzettel-Klosinski and Dietz (2012), table 2.
    const aloud = { en: 228, de: 179, fr: 195, nl: 202, es: 218 };
    for (const language of LANGUAGES) {
      const expected = (125 * aloud[language]) / aloud.en;
      expect(Math.abs(narrationWords(language).wordsPerMinute - expected)).toBeLessThanOrEqual(2.5);
    }
  });

  async function work(body: string): Promise<string[]> {
    const text = (await narrate(body)).text("narration.txt");
    return [...text.matchAll(/^\d[\d.]*\.\d+ .*, (.*) to do(\*?)$/gm)].map(
      ([, time, mark]) => `${time}${mark}`,
    );
  }

  test("work follows from the parts that a step fits and makes", async () => {
    expect(
      await work(
        "## A\n\n1. Look.\n2. Fit [R1, R2].\n3. Put [4 × M3x6] in.\n4. Wind it. [make: L1]",
      ),
    ).toEqual(["30 s", "2 min 30 s", "1 min 50 s", "10 min 30 s"]);
  });

  test("an author's estimate holds for the step below it or around it", async () => {
    expect(
      await work(
        "## A\n\n1. Look.\n\n<!-- takes 1 h 30 min -->\n\n2. Fit [R1]. \n3. Turn <!-- takes 90 s --> it.\n",
      ),
    ).toEqual(["30 s", "1 h 30 min*", "1 min 30 s*"]);
  });

  test("one at a stage's head is shared among its other steps", async () => {
    expect(
      await work(
        "## A\n\n<!-- takes 20 min -->\n\n1. Fit [R1].\n2. Fit [R2].\n\n<!-- takes 10 min -->\n\n3. Test.\n\n## B\n\n1. Look.",
      ),
    ).toEqual(["5 min", "5 min", "10 min*", "30 s"]);
  });
});

test("the same guide gives the same bytes", async () => {
  const [one, other] = await Promise.all(
    [1, 2].map(() => publishSample("heron", "heron.md", ["narration"])),
  );
  const names = one!.files.map(({ name }) => name);
  expect(names).toEqual(other!.files.map(({ name }) => name));
  expect(names.map(one!.text)).toEqual(names.map(other!.text));
});

test("a guide with neither title nor headings has a script, and a chapter with a name", async () => {
  const text = `---\nparts: parts.csv\n---\n\n1. Fit [R1].\n${LIST}`;
  const published = await publishFiles(fixture(text).files, "guide.md", ["narration"]);
  const lines = published.text("narration.txt").split("\n");
  expect(lines[0]).toMatch(/^Script of a video/);
  expect(lines.filter((line) => line !== line.trimEnd())).toEqual([]);
  expect(cuesOf(published, "narration-chapters.vtt").map((cue) => cue.text)).toEqual(["stage 1"]);
  expect(cuesOf(published).map((cue) => cue.text)).toEqual(["Fit R1."]);
});
