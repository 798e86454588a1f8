/** The hover on a mark that has sets picked: the work, and what to expect of it. */
import { expect, test } from "vitest";
import { hoverInGuide } from "../../server/src/features/hover.ts";
import { Service } from "../../server/src/service.ts";
import { MemoryFiles } from "../memoryFiles.ts";

const LIST = "Designator,Quantity,Value\nQ1-Q4,10,BC547\n";
const FOUR = "Designator,Quantity,Value\nQ1-Q4,4,BC547\n";

/** The first paragraph of the hover on the first Q1 of the text. */
async function hover(step: string, list = LIST): Promise<string> {
  const text = `---\nparts: parts.csv\n---\n\n## Board\n\n1. ${step}\n`;
  const files = new MemoryFiles();
  files.set("file:///kit/guide.md", text);
  files.set("file:///kit/parts.csv", list);
  const service = new Service(files);
  service.follow("file:///kit/guide.md");
  await service.settle();
  const [guide] = service.guidesOf("file:///kit/guide.md");
  const found = hoverInGuide(guide!, "file:///kit/guide.md", text.indexOf("Q1") + 1);
  return found!.markdown.replaceAll("\\", "").replaceAll("\u00a0", " ").split("\n\n")[0]!;
}

// n(n − 1)/2 comparisons; the closest two of ten lie 0.037 σ apart on average (simulated).
test("The hover tells what to expect of one pair of ten", async () => {
  expect(await hover("Pick two. [match: Q1+Q2]")).toMatch(
    /^Picks 1 pair from 10 parts: 10 readings, or 45 comparisons of each with each\. Expect the best pair to spread about 0\.03[678] σ where readings scatter by σ/,
  );
});

// All of a lot in pairs: 1.46474 σ together (means of order statistics), so 0.73 a pair.
test("It tells what to expect of two pairs of four", async () => {
  const told = await hover("Pick. [match: Q1+Q2, Q3+Q4]", FOUR);
  expect(told).toContain("Picks 2 pairs from 4 parts: 4 readings, or 6 comparisons");
  expect(told).toMatch(/Expect about 0\.7[1-5] σ a pair, (?:1|1\.\d|0\.9\d) σ in the worst/);
});

// The range of four is 2.059 σ on average (d2 of control charts).
test("It tells how far a lot may scatter for the limit of its step", async () => {
  const told = await hover(
    "Pick. [match: Q1+Q2+Q3+Q4] They may differ by {read df(Q1, Q2, Q3, Q4) < 60 Hz}.",
    FOUR,
  );
  expect(told).toContain("Picks 1 set of 4 from 4 parts");
  expect(told).toMatch(
    /To stay below the 60 Hz of this step on average, the lot may scatter by (?:28|29)(?:\.\d)? Hz\.$/,
  );
});

test("On other marks it says nothing of picking", async () => {
  expect(await hover("Fit. [Q1]")).not.toContain("Picks");
});
