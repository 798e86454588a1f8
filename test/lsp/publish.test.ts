/** Publishing for an editor: what is offered, the files, progress and cancelling. */
import { afterEach, expect, test } from "vitest";
import { CancellationTokenSource } from "vscode-jsonrpc";
import type {
  PublishableResult,
  PublishParams,
  PublishResult,
} from "../../server/src/lsp/protocol.ts";
import { OUTPUT_NAMES } from "../../server/src/publish/outputs/all.ts";
import { FOLDER, TestClient } from "./client.ts";

const GUIDE = `---
title: Wren
parts: parts.csv
---
## Board

1. Fit [R1].

   ![The board](r1.svg)
`;
const FILES = {
  "guide.md": GUIDE,
  "parts.csv": "Designator,Quantity,Value\nR1,1,4k7\n",
  "r1.svg": '<svg xmlns="http://www.w3.org/2000/svg"/>',
};

let client: TestClient;
afterEach(() => client.stop());

async function open(text = GUIDE): Promise<void> {
  client = new TestClient({ ...FILES, "guide.md": text });
  await client.start();
  await client.open("guide.md", text);
}

function publishable(name: string): Promise<PublishableResult> {
  return client.connection.sendRequest("kitquill/publishable", { uri: FOLDER + name });
}

function publish(params: Partial<PublishParams> = {}): Promise<PublishResult> {
  return client.connection.sendRequest("kitquill/publish", {
    guide: `${FOLDER}guide.md`,
    outputs: OUTPUT_NAMES,
    picturesBeside: false,
    ...params,
  });
}

test("a page and a parts list lead to their guide, other files to none", async () => {
  await open();
  const expected = { guide: `${FOLDER}guide.md`, errors: 0 };
  expect(await publishable("guide.md")).toMatchObject(expected);
  expect(await publishable("parts.csv")).toMatchObject(expected);
  expect((await publishable("guide.md"))!.outputs.map(({ name }) => name)).toEqual(OUTPUT_NAMES);
  expect(await publishable("other.md")).toBeNull();
});

test("errors are counted, and the page tells of them when it is published all the same", async () => {
  await open(GUIDE.replace("[R1]", "[R1, R9]"));
  expect((await publishable("guide.md"))!.errors).toBe(1);
  const { files } = (await publish({ outputs: ["guide"] }))!;
  expect(files[0]!.content).toMatchObject({ text: expect.stringContaining('class="forced"') });
});

test("the files are those of the text in the editor, with the picture in the page", async () => {
  await open();
  await client.change("guide.md", 6, 3, 6, "Solder");
  const { files, faults } = (await publish())!;
  expect(faults).toEqual([]);
  const text = (name: string) => {
    const content = files.find((file) => file.name === name)!.content;
    return "text" in content ? content.text : "";
  };
  expect(text("guide.html")).toContain("Solder <span");
  expect(text("narration.vtt")).toContain("Solder R1.");
  const svg = Buffer.from(FILES["r1.svg"]).toString("base64");
  expect(text("guide.html")).toContain(`<img src="data:image/svg+xml;base64,${svg}"`);
});

test("pictures beside the page are files of their own", async () => {
  await open();
  const { files } = (await publish({ outputs: ["guide"], picturesBeside: true }))!;
  const picture = files.find(({ name }) => name.startsWith("pictures/r1-"))!;
  expect(picture.mark).toBeUndefined();
  expect(picture.content).toEqual({ base64: Buffer.from(FILES["r1.svg"]).toString("base64") });
});

test("pictures are told of as they are read", async () => {
  await open();
  const told: unknown[] = [];
  client.connection.onNotification("$/progress", (progress) => {
    told.push(progress);
  });
  await publish({ workDoneToken: "t" });
  const value = { kind: "report", message: "Reading picture 1 of 1", percentage: 0 };
  expect(told).toEqual([{ token: "t", value }]);
});

test("when it is cancelled, no more pictures are read and no file is sent", async () => {
  const many = Array.from({ length: 40 }, (_, i) => `![Side](side${i}.svg)`);
  await open(GUIDE.replace("![The board](r1.svg)", many.join(" ")));
  const cancelling = new CancellationTokenSource();
  const read = client.files.read.bind(client.files);
  let pictures = 0;
  client.files.read = async (uri) => {
    if (!uri.endsWith(".svg")) return read(uri);
    if (pictures++ === 0) cancelling.cancel();
    await client.settled();
    return new TextEncoder().encode(FILES["r1.svg"]);
  };
  const params = { guide: `${FOLDER}guide.md`, outputs: ["guide"], picturesBeside: false };
  const published = client.connection.sendRequest("kitquill/publish", params, cancelling.token);
  await expect(published).rejects.toThrow("Publishing was cancelled.");
  expect(pictures).toBeGreaterThan(0);
  expect(pictures).toBeLessThan(many.length);
});
