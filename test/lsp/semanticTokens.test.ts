import { readFileSync } from "node:fs";
import fc from "fast-check";
import { afterEach, describe, expect, test } from "vitest";
import type { InitializeResult, SemanticTokens, SemanticTokensDelta } from "vscode-languageserver";
import { TOKEN_MODIFIERS, TOKEN_TYPES } from "../../server/src/features/tokens/token.ts";
import { changedData } from "../../server/src/lsp/tokenData.ts";
import { FOLDER, TestClient } from "./client.ts";

const LIST = "Designator,Quantity,Value\nR1–R4,4,4k7\nC1,1,1u\n,4,M3x6\n";
const HEAD = "---\nparts: parts.csv\n---\n\n## A\n\n";

let client: TestClient;

afterEach(() => client?.stop());

async function opened(body: string) {
  client = new TestClient({ "parts.csv": LIST });
  await client.start();
  await client.open("guide.md", HEAD + body);
}

function request<Result>(method: string, more: object = {}): Promise<Result> {
  const textDocument = { uri: `${FOLDER}guide.md` };
  return client.connection.sendRequest(`textDocument/semanticTokens/${method}`, {
    textDocument,
    ...more,
  });
}

/** `text type.modifier` of each token, from the numbers alone. */
function decoded(data: readonly number[], text: string): string[] {
  const lines = text.split(/\r\n|\n|\r/);
  const found: string[] = [];
  let [line, column] = [0, 0];
  for (let i = 0; i < data.length; i += 5) {
    const [down, right, length, type, bits] = data.slice(i, i + 5) as [
      number,
      number,
      number,
      number,
      number,
    ];
    column = down === 0 ? column + right : right;
    line += down;
    const modifiers = TOKEN_MODIFIERS.filter((_, bit) => bits & (1 << bit));
    const shown = [TOKEN_TYPES[type], ...modifiers].join(".");
    found.push(`${lines[line]!.slice(column, column + length)} ${shown}`);
  }
  return found;
}

async function tokens(body: string): Promise<string[]> {
  await opened(body);
  const { data } = await request<SemanticTokens>("full");
  return decoded(data, HEAD + body);
}

describe("tokens", () => {
  test.each([
    [
      "a mark by its role",
      "1. [R1–R2, C1 = 1u] [later: R3]",
      [
        "R1–R2 variable.definition",
        "C1 variable.definition",
        "1u number",
        "later keyword",
        "R3 variable.modification",
      ],
    ],
    [
      "a part that is left out, and a pair",
      "1. [empty: R1] [match: R2+R3]",
      [
        "empty keyword",
        "R1 variable.deprecated",
        "match keyword",
        "R2 variable.declaration",
        "R3 variable.declaration",
      ],
    ],
    [
      "sets, hardware, tools and labels",
      "1. [all R except R4] [2 × M3x6] [tool: pliers] [#x] [see: x]",
      [
        "all R except  type",
        "R4 variable.readonly",
        "2 ×  number",
        "M3x6 variable.definition",
        "tool keyword",
        "pliers string",
        "x property.declaration",
        "see keyword",
        "x property",
      ],
    ],
    [
      "known parts in the prose, not in code",
      "1. R1 and R3–R4, R9 or `R2` [C1]",
      ["R1 variable.readonly", "R3–R4 variable.readonly", "C1 variable.definition"],
    ],
    [
      "figures",
      "1. {A = 2 V} {A * R1 = 9 V} [C1]",
      [
        "A property.declaration",
        "A property.readonly",
        "R1 variable.readonly",
        "9 V number",
        "C1 variable.definition",
      ],
    ],
    [
      "signal words by their gravity",
      "> **WARNING: fire.** R1.\n\n> **CAUTION: heat.** No.\n\n1. [C1]",
      [
        "WARNING macro.documentation",
        "R1 variable.readonly",
        "CAUTION keyword.documentation",
        "C1 variable.definition",
      ],
    ],
    [
      "a set on two lines",
      "1. [all R\n   except R1]",
      ["all R type", "except  type", "R1 variable.readonly"],
    ],
    ["nothing in plain brackets", "1. Press [RESET]. ![R1](a.png)", []],
  ])("%s", async (_, body, wanted) => {
    expect(await tokens(body)).toEqual(wanted);
  });

  test("none in Markdown that is no guide", async () => {
    client = new TestClient({});
    await client.start();
    await client.open("guide.md", "# Notes\n\n1. [R1]\n");
    expect(await request("full")).toEqual({ data: [] });
  });

  test("of a range only", async () => {
    await opened("1. [R1]\n2. [R2]\n3. [R3]\n");
    const range = { start: { line: 7, character: 0 }, end: { line: 7, character: 5 } };
    const { data } = await request<SemanticTokens>("range", { range });
    expect(decoded(data, `${HEAD}1. [R1]\n2. [R2]\n3. [R3]\n`)).toContain("R2 variable.definition");
  });
});

describe("after an edit", () => {
  test("only what is new is sent", async () => {
    const steps = Array.from(
      { length: 200 },
      (_, i) => `${i + 1}. Solder [R${(i % 4) + 1}] and R1.`,
    );
    await opened(`${steps.join("\n")}\n`);
    const first = await request<SemanticTokens>("full");
    await client.change("guide.md", 100, 0, 0, "\n");
    const delta = await request<SemanticTokensDelta>("full/delta", {
      previousResultId: first.resultId,
    });
    expect(delta.edits).toHaveLength(1);
    expect(delta.edits[0]!.data!.length).toBeLessThanOrEqual(5);
  });

  test("all is sent to a client that knows an older result", async () => {
    await opened("1. [R1]\n");
    await request<SemanticTokens>("full");
    const answer = await request<SemanticTokens>("full/delta", { previousResultId: "0" });
    expect(answer.data).toHaveLength(5);
  });

  test("what was sent with the changes since is what a fresh server sends", async () => {
    const words = ["[R1]", "R2", "\n", "\n2. ", "## B\n", "[later: C1]", "{A = 2 V}", "`", "> "];
    const edit = fc.tuple(fc.nat(), fc.nat(6), fc.constantFrom(...words, ""));
    await fc.assert(
      fc.asyncProperty(fc.array(edit, { minLength: 1, maxLength: 6 }), async (edits) => {
        let text = `${HEAD}1. [R1] and R2.\n2. [R3, C1] {A = 2 V}\n\n> **WARNING: fire.** R4.\n\n## C\n\n1. [R2]\n`;
        client = new TestClient({ "parts.csv": LIST });
        await client.start();
        await client.open("guide.md", text);
        let { data, resultId } = await request<SemanticTokens>("full");
        for (const [at, length, word] of edits) {
          const start = HEAD.length + (at % (text.length - HEAD.length));
          const before = text.slice(0, start).split("\n");
          const place = { line: before.length - 1, character: before.at(-1)!.length };
          const end = Math.min(text.length, start + length);
          const gone = text.slice(0, end).split("\n");
          text = text.slice(0, start) + word + text.slice(end);
          await client.replace(
            "guide.md",
            place,
            {
              line: gone.length - 1,
              character: gone.at(-1)!.length,
            },
            word,
          );
          const delta = await request<SemanticTokensDelta & SemanticTokens>("full/delta", {
            previousResultId: resultId,
          });
          resultId = delta.resultId;
          data = delta.edits ? patched(data, delta) : delta.data;
        }
        client.stop();
        client = new TestClient({ "parts.csv": LIST });
        await client.start();
        await client.open("guide.md", text);
        expect(data).toEqual((await request<SemanticTokens>("full")).data);
        client.stop();
      }),
      { numRuns: 30 },
    );
  });
});

function patched(data: readonly number[], { edits }: SemanticTokensDelta): number[] {
  const after = [...data];
  for (const { start, deleteCount, data: fresh = [] } of edits) {
    after.splice(start, deleteCount, ...fresh);
  }
  return after;
}

test("the one edit makes the new numbers of the old", () => {
  const numbers = fc.array(fc.array(fc.nat(2), { minLength: 5, maxLength: 5 }), { maxLength: 6 });
  fc.assert(
    fc.property(numbers, numbers, (one, other) => {
      const [before, after] = [one.flat(), other.flat()];
      const typed = (list: readonly number[]) => Uint32Array.from(list);
      const edits = changedData(typed(before), typed(after)).map((edit) => ({
        ...edit,
        data: [...edit.data],
      }));
      expect(patched(before, { edits })).toEqual(after);
      for (const { start, deleteCount } of edits) {
        expect([start % 5, deleteCount % 5]).toEqual([0, 0]);
      }
    }),
  );
});

test("the package tells colours for every type that is sent", async () => {
  client = new TestClient({});
  const { capabilities } = await client.connection.sendRequest<InitializeResult>("initialize", {
    processId: null,
    rootUri: null,
    capabilities: {},
  });
  const { legend } = capabilities.semanticTokensProvider!;
  const { contributes } = JSON.parse(readFileSync("package.json", "utf8"));
  const told = Object.keys(contributes.semanticTokenScopes[0].scopes);
  for (const type of legend.tokenTypes) expect(told.some((one) => one.startsWith(type))).toBe(true);
  for (const selector of told) expect(legend.tokenTypes).toContain(selector.split(".")[0]);
});
