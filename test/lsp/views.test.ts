/** What the editor's views ask the server for. */
import { afterEach, expect, test } from "vitest";
import {
  OVERVIEW,
  type OverviewResult,
  STAGES,
  START_GUIDE,
  type StagesResult,
  type StartGuideResult,
} from "../../server/src/lsp/protocol.ts";
import { FOLDER, TestClient } from "./client.ts";

const GUIDE = "---\nparts: list.csv\n---\n\n## Board\n\n1. Solder [R1, R9].\n";
const LIST = "Designator,Value\nR1,1k\nR2,2k\n";
let client: TestClient;

afterEach(() => client.stop());

async function started(files: Record<string, string>): Promise<TestClient> {
  client = new TestClient(files);
  await client.start();
  return client;
}

const overview = (name: string) =>
  client.connection.sendRequest<OverviewResult>(OVERVIEW, { uri: FOLDER + name });

const stages = (name: string) =>
  client.connection.sendRequest<StagesResult>(STAGES, { uri: FOLDER + name });

test("a guide is seen at a glance from its page and from its list, as it stands in the editor", async () => {
  await started({ "guide.md": GUIDE, "list.csv": LIST });
  await client.open("guide.md", GUIDE);
  const first = await overview("guide.md");
  // R9 is taken for a slip of R2, which is then not reported as missing.
  expect(first).toMatchObject({ uri: `${FOLDER}guide.md`, listed: 2, fitted: 1, errors: 1 });
  expect((await stages("list.csv"))![0]!.steps[0]).toMatchObject({
    number: "1.1",
    worst: "error",
    spot: { uri: `${FOLDER}guide.md`, range: { start: { line: 6, character: 0 } } },
  });
  await client.change("guide.md", 6, 15, 17, "R2");
  expect(await overview("list.csv")).toMatchObject({ fitted: 2, left: [], errors: 0 });
});

test("a file of no guide has no overview and no stages", async () => {
  await started({ "notes.md": "# Notes\n" });
  await client.open("notes.md", "# Notes\n");
  expect(await overview("notes.md")).toBeNull();
  expect(await stages("notes.md")).toBeNull();
});

test("a guide is begun with the path of its list as seen from its own folder", async () => {
  await started({ "lists/wren.csv": LIST, "empty.csv": "" });
  const begin = (list: string) =>
    client.connection.sendRequest<StartGuideResult>(START_GUIDE, {
      list: FOLDER + list,
      guide: `${FOLDER}guides/wren.md`,
      title: "Wren",
      language: "de",
    });
  expect(await begin("lists/wren.csv")).toEqual({
    text: expect.stringMatching(/language: de\nparts: "\.\.\/lists\/wren\.csv"[\s\S]*\[R1 = 1k\]/),
  });
  expect(await begin("none.csv")).toEqual({ problem: expect.stringContaining("no file") });
  expect(await begin("empty.csv")).toEqual({ problem: expect.stringContaining("is empty") });
});
