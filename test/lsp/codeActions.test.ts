import { afterEach, describe, expect, test } from "vitest";
import type { CodeAction, TextDocumentEdit } from "vscode-languageserver";
import { LineIndex } from "../../server/src/text/lines.ts";
import { applyEdits } from "../../server/src/text/span.ts";
import { FOLDER, TestClient } from "./client.ts";

const LIST = "Designator,Value,Height\nR1,1k,2.5\nR2,2k,2.5\nK1,RLY,11\nC1,1u,5\n";
const HEAD = "---\nparts: parts.csv\n---\n\n## A\n\n";
const LAZY = {
  textDocument: { codeAction: { dataSupport: true, resolveSupport: { properties: ["edit"] } } },
};

let client: TestClient;
let text: string;

afterEach(() => client.stop());

async function opened(body: string, capabilities: object = {}) {
  client = new TestClient({ "parts.csv": LIST });
  await client.start({}, capabilities, { goTo: "go" });
  text = HEAD + body;
  await client.open("guide.md", text);
  await client.settled();
}

function actions(line: number, character: number, only?: string[]): Promise<CodeAction[]> {
  const place = { line, character };
  return client.connection.sendRequest("textDocument/codeAction", {
    textDocument: { uri: `${FOLDER}guide.md` },
    range: { start: place, end: place },
    context: { diagnostics: [], ...(only && { only }) },
  });
}

/** The body after an action. */
function applied({ edit }: CodeAction): string {
  const lines = new LineIndex(text);
  const [change] = edit!.documentChanges as TextDocumentEdit[];
  const edits = change!.edits.map((one) => {
    const { range, newText } = one as {
      range: {
        start: { line: number; character: number };
        end: { line: number; character: number };
      };
      newText: string;
    };
    const [start, end] = [range.start, range.end].map(({ line, character }) =>
      lines.offsetAt({ line, column: character }),
    );
    return { span: { start: start!, end: end! }, text: newText };
  });
  return applyEdits(text, edits).slice(HEAD.length);
}

describe("code actions", () => {
  test("put a stage in height order, when it is chosen", async () => {
    await opened("1. Fit [K1].\n2. Fit [C1].\n3. Fit [R1].\n4. Fit [R2].\n", LAZY);
    const [order] = (await actions(7, 9, ["refactor.rewrite"])).filter(({ title }) =>
      title.includes("height order"),
    );
    expect(order).toMatchObject({ title: "Put stage 1 in height order" });
    expect(order!.edit).toBeUndefined();
    const resolved = await client.connection.sendRequest<CodeAction>("codeAction/resolve", order);
    expect(applied(resolved)).toBe("1. Fit [R1].\n2. Fit [R2].\n3. Fit [C1].\n4. Fit [K1].\n");
  });

  test("at once for a client that cannot wait", async () => {
    await opened("1. Fit [K1].\n2. Fit [C1].\n3. Fit [R1, R2].\n");
    const [order] = (await actions(7, 9)).filter(({ title }) => title.includes("height order"));
    expect(applied(order!)).toBe("1. Fit [R1, R2].\n2. Fit [C1].\n3. Fit [K1].\n");
  });

  test("offer no height order where no step can be moved to its place", async () => {
    await opened("1. Fit [K1].\n\n   > **NOTICE: fire.** It melts.\n2. Fit [C1, R1, R2].\n", LAZY);
    const titles = (await actions(6, 9)).map(({ title }) => title);
    expect(titles).toContain("Allow height-order in step 1.1, with a reason");
    expect(titles).not.toContain("Put stage 1 in height order");
  });

  test("are refused where the text has changed since", async () => {
    await opened("1. Fit [K1].\n2. Fit [R1].\n", LAZY);
    const [order] = (await actions(7, 9)).filter(({ title }) => title.includes("height order"));
    await client.change("guide.md", 6, 0, 0, "x");
    await expect(client.connection.sendRequest("codeAction/resolve", order)).rejects.toThrow(
      "has changed",
    );
  });

  test("fix all findings of a check, and all that is safe", async () => {
    const body = "1. Press 5V and 12V, set 3V. [R1, R2, K1, C1]\n";
    await opened(body);
    const at = body.indexOf("5V");
    const all = (await actions(6, at)).find(({ title }) => title.startsWith("Fix all"))!;
    expect(all.title).toBe("Fix all findings of number-unit in this file");
    const fixed = "1. Press 5 V and 12 V, set 3 V. [R1, R2, K1, C1]\n";
    expect(applied(all).replaceAll("\u00a0", " ")).toBe(fixed);
    const [safe] = await actions(0, 0, ["source.fixAll.kitquill"]);
    expect(applied(safe!).replaceAll("\u00a0", " ")).toBe(fixed);
    expect(await actions(0, 0, ["source.organizeImports"])).toEqual([]);
    const kinds = new Set((await actions(6, at)).map(({ kind }) => kind));
    expect([...kinds].some((kind) => kind!.startsWith("source"))).toBe(false);
  });

  test("allow a finding, and lead to where the reason is written", async () => {
    await opened("1. Fit [K1].\n2. Fit [R1].\n");
    const allow = (await actions(7, 9)).find(({ title }) =>
      title.startsWith("Allow height-order"),
    )!;
    expect(applied(allow)).toBe("1. Fit [K1].\n<!-- allow height-order:  -->\n2. Fit [R1].\n");
    const place = { line: 7, character: "<!-- allow height-order: ".length };
    expect(allow.command).toMatchObject({
      command: "go",
      arguments: [{ range: { start: place, end: place } }],
    });
  });

  test("move a step, and lead to where the cursor then is in it", async () => {
    await opened("1. Fit [R1].\n2. Fit [R2].\n   ![a](a.png)\n3. Fit [K1].\n");
    const [up, down] = await actions(7, 9, ["refactor.move"]);
    const leads = (line: number) => {
      const place = { line, character: 9 };
      return [{ uri: `${FOLDER}guide.md`, range: { start: place, end: place } }];
    };
    expect(up!.command).toMatchObject({ command: "go", arguments: leads(6) });
    expect(down!.command).toMatchObject({ command: "go", arguments: leads(8) });
  });

  test("move a step only when moves are asked for", async () => {
    await opened("1. Fit [R1].\n2. Fit [R2].\n");
    const titles = async (only?: string[]) => (await actions(7, 5, only)).map(({ title }) => title);
    expect(await titles(["refactor.move"])).toEqual(["Move step 1.2 up"]);
    expect(await titles(["refactor"])).toContain("Move step 1.2 up");
    expect(await titles(["quickfix"])).not.toContain("Move step 1.2 up");
  });

  test("mark what plain text names, each mark to be confirmed where the client can ask", async () => {
    const body = "- R1, R2 1k\n- Mind C1.\n";
    const annotating = { workspace: { workspaceEdit: { changeAnnotationSupport: {} } } };
    await opened(body, annotating);
    const mark = async () => (await actions(6, 3)).find(({ title }) => title.startsWith("Mark"))!;
    const [first] = (await actions(4, 3)).filter(({ title }) => title.endsWith("this stage"));
    expect(applied(first!)).toBe("- [R1, R2] 1k\n- Mind C1.\n");
    expect(Object.values(first!.edit!.changeAnnotations!)).toEqual([
      {
        label: "They begin their line",
        needsConfirmation: true,
        description: "Left to you: C1.",
      },
    ]);
    const { title, edit } = await mark();
    expect(title).toBe("Mark the parts named in this line");
    expect(Object.values(edit!.changeAnnotations!)[0]).not.toHaveProperty("description");
    await client.stop();
    await opened(body);
    expect((await mark()).edit).not.toHaveProperty("changeAnnotations");
    const [all] = (await actions(1, 0)).filter(({ title }) => title.endsWith("this guide"));
    expect(applied(all!)).toBe("- [R1, R2] 1k\n- Mind C1.\n");
  });

  test("none in Markdown that is no guide", async () => {
    client = new TestClient({});
    await client.start();
    await client.open("guide.md", "# Notes\n\n1. Fit [R1]. Cut it.\n");
    expect(await actions(2, 15)).toEqual([]);
  });
});
