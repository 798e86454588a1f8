/** Checks that read words come last where that takes long, and what the others found is shown first. */
import { expect, test, vi } from "vitest";
import { PieceNode } from "../../server/src/model/pieceNode.ts";
import { Service } from "../../server/src/service.ts";
import { MemoryFiles } from "../memoryFiles.ts";

const GUIDE = "file:///kit/guide.md";
const STAGES = 120;

function text(): string {
  const stages = Array.from(
    { length: STAGES },
    (_, i) => `## Stage ${i}\n\n1. Fit [R${i}, X${i}] and set 5V.\n`,
  );
  const head = "---\nparts: parts.csv\nlanguage: en\n---\n\n";
  return `${head}<!-- allow repeated-word: so it is -->\n\n${stages.join("\n")}\n1. Turn the the knob.\n`;
}

function opened(guide: string): Service {
  const files = new MemoryFiles();
  const lines = Array.from({ length: STAGES }, (_, i) => `R${i},1k`);
  files.set("file:///kit/parts.csv", `Designator,Value\n${lines.join("\n")}\n`);
  const service = new Service(files);
  service.open(GUIDE, 0, guide);
  return service;
}

function codes(service: Service): Set<string> {
  service.takeChanges();
  return new Set(service.diagnoses(GUIDE).map(({ code }) => code));
}

function shown(service: Service): unknown[] {
  service.takeChanges();
  return service.diagnoses(GUIDE).map(({ code, message, span }) => [code, message, span]);
}

test("what needs no words is shown before any word is read", async () => {
  const prose = vi.spyOn(PieceNode.prototype, "prose", "get");
  const service = opened(text());
  const pauses: Set<string>[] = [];
  for await (const pause of service.update()) {
    if (!pause) continue;
    expect(prose).not.toHaveBeenCalled();
    pauses.push(codes(service));
  }
  expect(pauses).toHaveLength(1);
  expect(pauses[0]).toContain("unknown-part");
  expect(pauses[0]).not.toContain("number-unit");
  // Whether an allow-comment is needed is not known yet.
  expect(pauses[0]).not.toContain("allow-unused");
  expect(codes(service)).toContain("number-unit");
  expect(codes(service)).not.toContain("allow-unused");
  prose.mockRestore();
});

test("in a short guide too when it is opened, and after an edit all comes at once", async () => {
  const guide = "---\nparts: parts.csv\n---\n\n## A\n\n1. Fit [R1, X1] and set 5V.\n";
  const service = opened(guide);
  const pauses = async () => {
    const found: Set<string>[] = [];
    for await (const pause of service.update()) if (pause) found.push(codes(service));
    return found;
  };
  const [first, ...others] = await pauses();
  expect(first).toContain("unknown-part");
  expect(first).not.toContain("number-unit");
  expect(others).toEqual([]);
  expect(codes(service)).toContain("number-unit");
  const at = guide.indexOf("5V");
  service.edit(GUIDE, 1, [{ span: { start: at, end: at + 2 }, text: "6V" }]);
  expect(await pauses()).toEqual([]);
  expect(codes(service)).toContain("number-unit");
});

test.each([
  ["a word", "and set 5V", "and then set 5V"],
  ["a mark", "[R7, X7]", "[R7]"],
  ["a stage", "## Stage 9\n", "## Stage 9\n\n1. Look at [R3].\n"],
  ["the list", "parts: parts.csv", "parts: parts.csv\nheights: { R3: 3 mm }"],
])("an edit of %s in between leaves what a fresh check finds", async (_, from, to) => {
  const before = text();
  const service = opened(before);
  const start = before.indexOf(from);
  let edited = false;
  for await (const pause of service.update()) {
    if (!pause || edited) continue;
    edited = true;
    service.edit(GUIDE, 1, [{ span: { start, end: start + from.length }, text: to }]);
  }
  expect(edited).toBe(true);
  const fresh = opened(before.replace(from, to));
  await fresh.settle();
  expect(shown(service)).toEqual(shown(fresh));
});
