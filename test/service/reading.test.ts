/** What reading the pages tells is shown before the parts lists are read, which may take long. */
import { expect, test } from "vitest";
import { DEFAULT_SETTINGS, Service, type ServiceSettings } from "../../server/src/service.ts";
import { MemoryFiles } from "../memoryFiles.ts";

const GUIDE = "file:///kit/guide.md";
const LIST = "file:///kit/parts.csv";
const HEAD = "---\nparts: parts.csv\npages: [second.md]\ntool: [iron]\n---\n\n## A\n\n";
const STEPS = "1. Fit [R1, X1]. [mkae: L1] It takes {U = 5 V.\n";

/** Files whose parts list is there when it is let go. */
class SlowList extends MemoryFiles {
  letGo!: () => void;
  readonly #wait = new Promise<void>((resolve) => {
    this.letGo = resolve;
  });

  override async read(uri: string): Promise<Uint8Array | undefined> {
    if (uri === LIST) await this.#wait;
    return super.read(uri);
  }
}

function opened(guide: string, settings: Partial<ServiceSettings> = {}) {
  const files = new SlowList();
  files.set(LIST, "Designator,Value\nR1,1k\n");
  files.set("file:///kit/second.md", "## B\n\n1. [mkae: L2]\n");
  const service = new Service(files, { ...DEFAULT_SETTINGS, ...settings });
  service.open(GUIDE, 0, guide);
  return { files, service };
}

/** The findings at each pause that is worth it; the list is let go at the first. */
async function stagesOf({ files, service }: ReturnType<typeof opened>): Promise<string[][]> {
  const stages: string[][] = [];
  for await (const pause of service.update()) {
    if (!pause) continue;
    stages.push(shown(service));
    files.letGo();
  }
  stages.push(shown(service));
  return stages;
}

function shown(service: Service): string[] {
  service.takeChanges();
  return service
    .diagnoses(GUIDE)
    .map(({ code, severity, span, message }) =>
      [severity, code, service.text(GUIDE)!.slice(span.start, span.end), message].join(" "),
    );
}

test("a guide shows what is wrong with its text while its list is not there", async () => {
  const [first, ...later] = await stagesOf(opened(HEAD + STEPS));
  expect(first).toEqual([
    expect.stringMatching(/^error front-matter tool /),
    expect.stringMatching(/^warning mark-syntax \[mkae: L1\] /),
    expect.stringMatching(/^warning figure-syntax /),
  ]);
  for (const stage of later) for (const finding of first!) expect(stage).toContain(finding);
  expect(later.at(-1)).toContainEqual(expect.stringMatching(/^error unknown-part X1 /));
});

test("a page that no editor has open is shown with the rest", async () => {
  const { files, service } = opened(HEAD + STEPS);
  for await (const pause of service.update()) {
    if (!pause) continue;
    service.takeChanges();
    if (service.guides().length === 0)
      expect(service.diagnoses("file:///kit/second.md")).toEqual([]);
    files.letGo();
  }
  service.takeChanges();
  const codes = service.diagnoses("file:///kit/second.md").map(({ code }) => code);
  expect(codes).toContain("mark-syntax");
});

test("what a comment allows or a setting turns off is not shown for a moment either", async () => {
  const allow = "<!-- allow mark-syntax: a word of ours -->\n\n";
  const off = opened(HEAD + allow + STEPS, { checks: { "figure-syntax": "off" } });
  const stages = await stagesOf(off);
  expect(stages[0]).toEqual([expect.stringMatching(/^error front-matter tool /)]);
  for (const stage of stages)
    expect(stage.filter((one) => /mark-syntax|figure-syntax/.test(one))).toEqual([]);
});

test("the guide's own severity counts from the first", async () => {
  const head = HEAD.replace("tool:", "checks:\n  mark-syntax: info\ntool:");
  const [first] = await stagesOf(opened(head + STEPS));
  expect(first).toContainEqual(expect.stringMatching(/^information mark-syntax \[mkae: L1\] /));
});

test("an edit while the list is awaited leaves what a fresh check finds", async () => {
  const edited = opened(HEAD + STEPS);
  const start = HEAD.length + STEPS.indexOf("mkae");
  let first = true;
  for await (const pause of edited.service.update()) {
    if (!pause) continue;
    if (first) edited.service.edit(GUIDE, 1, [{ span: { start, end: start + 4 }, text: "make" }]);
    first = false;
    edited.files.letGo();
  }
  const fresh = opened(HEAD + STEPS.replace("mkae", "make"));
  fresh.files.letGo();
  await fresh.service.settle();
  expect(shown(edited.service)).toEqual(shown(fresh.service));
  expect(shown(fresh.service).join()).not.toContain("mark-syntax");
});
