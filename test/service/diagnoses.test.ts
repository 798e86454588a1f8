/** What is shown of a finding is made once, and follows the edits around it. */
import { expect, test } from "vitest";
import { type Diagnosis, Service } from "../../server/src/service.ts";
import { MemoryFiles } from "../memoryFiles.ts";

const GUIDE = "file:///kit/guide.md";
const LIST = "file:///kit/parts.csv";
const TEXT = `---
parts: parts.csv
---

## One

1. Solder [R1, R8].
2. Solder [R2].

## Two

1. Solder [R1].
2. Solder [R9].
`;

async function opened(): Promise<Service> {
  const files = new MemoryFiles();
  files.set(LIST, "Designator,Value\nR1,1k\nR2,1k\n");
  const service = new Service(files);
  service.open(GUIDE, 0, TEXT);
  await service.settle();
  service.takeChanges();
  return service;
}

/** Replaces `from`, and gives the files that show something else. */
async function edited(service: Service, from: string, to: string): Promise<string[]> {
  const start = service.text(GUIDE)!.indexOf(from);
  service.edit(GUIDE, 1, [{ span: { start, end: start + from.length }, text: to }]);
  await service.settle();
  return service.takeChanges().map(({ uri }) => uri);
}

function shown(service: Service, code: string, holding = ""): Diagnosis {
  const all = service.diagnoses(GUIDE);
  return all.find((one) => one.code === code && one.message.includes(holding))!;
}

function source(service: Service, { span }: Diagnosis["related"][number] | Diagnosis): string {
  return service.text(GUIDE)!.slice(span.start, span.end);
}

test("an edit that moves no line moves the offsets of what is shown", async () => {
  const service = await opened();
  const unknown = shown(service, "unknown-part", "R9");
  expect(await edited(service, "## One", "## One and a half")).toEqual([]);
  expect(shown(service, "unknown-part", "R9")).toBe(unknown);
  expect(source(service, unknown)).toBe("R9");
  expect(source(service, shown(service, "duplicate-part").related[0]!)).toBe("R1");
});

test("an edit that moves lines counts them anew", async () => {
  const service = await opened();
  const { line } = shown(service, "unknown-part", "R9").start;
  expect(await edited(service, "## One", "Text.\n\n## One")).toEqual([GUIDE]);
  expect(shown(service, "unknown-part", "R9").start.line).toBe(line + 2);
});

test("a line more above and one less below leave the lines behind them where they were", async () => {
  const service = await opened();
  const before = shown(service, "unknown-part", "R9");
  expect(await edited(service, "## One\n\n1. Solder", "Text.\n## One\n1. Solder")).toEqual([]);
  expect(shown(service, "unknown-part", "R9")).toBe(before);
  expect(source(service, before)).toBe("R9");
});

test("a message follows the numbers of steps", async () => {
  const service = await opened();
  expect(shown(service, "duplicate-part").message).toContain("step 2.1");
  expect(await edited(service, "1. Solder [R1].", "1. Look.\n2. Solder [R1].")).toEqual([GUIDE]);
  expect(shown(service, "duplicate-part").message).toContain("step 2.2");
  await edited(service, "## Two", "## New\n\n1. Look again.\n\n## Two");
  const { message, related } = shown(service, "duplicate-part");
  expect(message).toContain("step 3.2");
  expect(related[0]!.message).toContain("step 1.1");
});
