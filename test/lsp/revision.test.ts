/** What the editor's view of a revised list asks the server for. */
import { afterEach, expect, test } from "vitest";
import {
  RENUMBER,
  REVISE,
  type RenumberResult,
  type ReviseResult,
  type SentRevision,
} from "../../server/src/lsp/protocol.ts";
import { FOLDER, TestClient } from "./client.ts";

const GUIDE = "---\nparts: new.csv\n---\n\n## Board\n\n1. Fit [R1 = 4k7].\n2. Fit [R5].\n";
const OLD = "Designator,Value\nR1,4k7\nR5,10k\n";
const NEW = "Designator,Value\nR1,5k6\nR9,10k\nC1,1u\n";
let client: TestClient;

afterEach(() => client.stop());

async function started(guide: string): Promise<void> {
  client = new TestClient({ "guide.md": guide, "old.csv": OLD, "new.csv": NEW });
  await client.start();
  await client.open("guide.md", guide);
}

const lists = {
  list: { uri: `${FOLDER}new.csv`, base64: btoa(NEW) },
  old: { uri: `${FOLDER}old.csv`, base64: btoa(OLD) },
};
const revise = () => client.connection.sendRequest<ReviseResult>(REVISE, lists);

test("each touched thing has its place, and its fix as edits of the text as it stands", async () => {
  await started(GUIDE);
  const { touched, renumbered } = (await revise()) as SentRevision;
  expect(renumbered).toEqual([{ from: "R5", to: "R9", board: "" }]);
  expect(touched.map(({ step, message }) => [step, message])).toEqual([
    ["1.1", expect.stringContaining("R1: value 4k7 → 5k6")],
    ["1.2", expect.stringContaining("R5 seems to be R9 now")],
    [undefined, "C1 (1u) is new in the list, and no step fits it."],
  ]);
  expect(touched[0]!.isOpen).toBe(true);
  expect(touched[0]!.fixes[0]!.edits).toEqual([
    {
      uri: `${FOLDER}guide.md`,
      range: { start: { line: 6, character: 13 }, end: { line: 6, character: 16 } },
      text: "5k6",
      version: 1,
    },
  ]);
  expect(touched[2]!.spot).toMatchObject({
    uri: `${FOLDER}new.csv`,
    range: { start: { line: 3 } },
  });
  await client.change("guide.md", 6, 13, 16, "5k6");
  const after = (await revise()) as SentRevision;
  expect(after.touched[0]).toMatchObject({ isOpen: false, source: "1. Fit [R1 = 5k6].\n" });
});

test("a guide that names the old list still is held against the new one", async () => {
  await started(GUIDE.replace("new.csv", "old.csv"));
  const { touched } = (await revise()) as SentRevision;
  expect(touched).toHaveLength(3);
  expect(touched[2]!.spot).toMatchObject({
    uri: `${FOLDER}new.csv`,
    range: { start: { line: 3 } },
  });
});

test("confirmed pairs are carried through", async () => {
  await started(GUIDE);
  const pairs = [{ from: "R5", to: "R9", board: "" }];
  const result = await client.connection.sendRequest<RenumberResult>(RENUMBER, { ...lists, pairs });
  expect(result).toEqual({
    edits: [
      {
        uri: `${FOLDER}guide.md`,
        range: { start: { line: 7, character: 9 }, end: { line: 7, character: 10 } },
        text: "9",
        version: 1,
      },
    ],
  });
});

test("lists of no guide are refused with the reason", async () => {
  await started(GUIDE.replace("new.csv", "other.csv"));
  expect(await revise()).toEqual({
    problem: "No guide names `new.csv` as its parts list, so nothing can be touched.",
  });
});
