/** Findings of missing parts follow what they hang on: marks, other findings, how far the guide goes. */
import { describe, expect, test } from "vitest";
import { Service } from "../../server/src/service.ts";
import { MemoryFiles } from "../memoryFiles.ts";

const GUIDE = "file:///kit/guide.md";
const LIST = "file:///kit/parts.csv";
const FRONT = "---\nparts: parts.csv\n---\n\n";

async function opened(text: string) {
  const files = new MemoryFiles();
  files.set(LIST, "Ref,Qty,Value\nR1,1,1k\nC1,1,1n\nC2,1,2n\nD1,1,1N4148\n");
  const service = new Service(files);
  let now = text;
  let version = 1;
  service.open(GUIDE, version, now);
  await service.settle();
  service.takeChanges();
  const shown = () =>
    service
      .diagnoses(LIST)
      .filter(({ code }) => code === "missing-part")
      .map(({ severity, start, related }) => `${severity} ${start.line + 1} ${related.length}`);
  const edit = async (before: string, after: string) => {
    const start = now.indexOf(before);
    const span = { start, end: start + before.length };
    service.edit(GUIDE, ++version, [{ span, text: after }]);
    now = now.slice(0, start) + after + now.slice(start + before.length);
    await service.settle();
    service.takeChanges();
  };
  return { service, shown, edit };
}

describe("missing parts", () => {
  test("turn to errors when the last stage has a step, and back", async () => {
    const { shown, edit } = await opened(`${FRONT}## A\n\n1. [R1]\n\n## B\n`);
    expect(shown()).toEqual(["information 3 0", "information 4 0", "information 5 0"]);
    await edit("## B\n", "## B\n\n1. [D1]\n");
    expect(shown()).toEqual(["error 3 0", "error 4 0"]);
    await edit("\n1. [D1]\n", "");
    expect(shown()).toEqual(["information 3 0", "information 4 0", "information 5 0"]);
  });

  test("are silent while another finding explains them", async () => {
    const { shown, edit } = await opened(`${FRONT}## A\n\n1. [R1, D1, C1]\n2. [C2]\n`);
    expect(shown()).toEqual([]);
    await edit("[C2]", "[C22]");
    expect(shown()).toEqual([]);
    await edit("[C22]", "[Q99]");
    expect(shown()).toEqual(["error 4 0"]);
    await edit("[Q99]", "[C2]");
    expect(shown()).toEqual([]);
  });

  test("tell of marks that name the part without fitting it", async () => {
    const { shown, edit } = await opened(`${FRONT}## A\n\n1. [R1, D1, C1]\n2. Go on.\n`);
    expect(shown()).toEqual(["error 4 0"]);
    await edit("Go on.", "[make: C2]");
    expect(shown()).toEqual(["error 4 1"]);
  });

  test("are shown as before where an edit leaves them", async () => {
    const { service, edit } = await opened(`${FRONT}## A\n\n1. [R1] Go on.\n`);
    const missing = () =>
      [LIST, GUIDE].flatMap((uri) =>
        service.diagnoses(uri).filter(({ code }) => code === "missing-part"),
      );
    const before = missing();
    expect(before).toHaveLength(4);
    await edit("Go on.", "Go on there.");
    for (const [i, one] of missing().entries()) expect(one).toBe(before[i]);
  });
});
