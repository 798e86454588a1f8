/** The model as JSON: held against its published schema by an independent validator, and against the files. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import Ajv2020 from "ajv/dist/2020.js";
import { parse } from "csv-parse/sync";
import { describe, expect, test } from "vitest";
import type { guideModel } from "../../server/src/publish/model/guideModel.ts";
import { jsonText } from "../../server/src/publish/model/jsonText.ts";
import { pathFromGuide } from "../../server/src/publish/model/pathFromGuide.ts";
import { publishFixture, publishSample } from "./published.ts";

type Model = ReturnType<typeof guideModel>;
type Schema = { [key: string]: unknown };

const ROOT = join(import.meta.dirname, "../..");
const SCHEMA: Schema = JSON.parse(
  readFileSync(join(ROOT, "server/docs/guide.schema.json"), "utf8"),
);

/** The schema with no room for fields that it does not describe. */
function closed(schema: Schema): Schema {
  const entries = Object.entries(schema).map(([key, value]) => [key, closedValue(value)]);
  const copy = Object.fromEntries(entries);
  return "properties" in schema ? { ...copy, additionalProperties: false } : copy;
}

function closedValue(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(closedValue);
  return typeof value === "object" && value !== null ? closed(value as Schema) : value;
}

const validate = new Ajv2020({ strict: true, allowUnionTypes: true, allErrors: true }).compile(
  closed(SCHEMA),
);

function problemsOf(model: unknown): readonly string[] {
  validate(model);
  return (validate.errors ?? []).map(({ instancePath, message }) => `${instancePath} ${message}`);
}

async function modelOf(folder: string, name: string): Promise<Model> {
  return JSON.parse((await publishSample(folder, name, ["json"])).text("guide.json"));
}

test.each([
  ["heron", "heron.md"],
  ["heron-faults", "heron.md"],
  ["constructs", "guide.md"],
  ["hostile", "crlf-bom.md"],
  ["hostile", "no-list.md"],
  ["hostile", "huge-range.md"],
])("%s/%s keeps to the schema", async (folder, name) => {
  expect(problemsOf(await modelOf(folder, name))).toEqual([]);
});

test("the schema refuses what it does not describe", async () => {
  const model = await modelOf("constructs", "guide.md");
  expect(problemsOf({ ...model, more: 1 })).not.toEqual([]);
  expect(problemsOf({ ...model, parts: [{ ...model.parts[0], heightMm: "2 mm" }] })).not.toEqual(
    [],
  );
  expect(problemsOf({ ...model, title: undefined })).not.toEqual([]);
});

test("the schema comes with the model", async () => {
  const published = await publishSample("constructs", "guide.md", ["json"]);
  expect(JSON.parse(published.text("guide.schema.json"))).toEqual(SCHEMA);
});

describe("Heron", () => {
  test("has every part of the list, with its value and the step that fits it", async () => {
    const model = await modelOf("heron", "heron.md");
    const list = parse(readFileSync(join(ROOT, "samples/heron/heron-parts.csv"), "utf8"), {
      columns: true,
    }) as { Reference: string; Value: string; DNP: string }[];
    const rows = new Map(list.map((line, index) => [index + 2, line]));
    const designated = list.filter(({ Reference }) => Reference !== "");
    expect(new Set(model.parts.map(({ row }) => row)).size).toBe(designated.length);
    expect(model.hardware).toHaveLength(list.length - designated.length);
    for (const part of model.parts) {
      expect(part.text).toBe(rows.get(part.row)!.Value);
      expect(part.fittedIn !== null, part.name).toBe(rows.get(part.row)!.DNP === "");
    }
  });

  test("tells the same from both ends: what a part is used for, what a step uses", async () => {
    const { parts, hardware, stages } = await modelOf("heron", "heron.md");
    const fromParts = [...parts, ...hardware].flatMap(({ name, uses }) =>
      uses.map(({ role, step }) => `${step} ${role} ${name}`),
    );
    const fromSteps = stages.flatMap(({ steps }) =>
      steps.flatMap(({ number, uses }) =>
        uses.map(({ role, part }) => `${number} ${role} ${part}`),
      ),
    );
    expect(fromParts.sort()).toEqual(fromSteps.sort());
  });

  test("figures come with their worst case in plain units", async () => {
    const { figures } = await modelOf("heron", "heron.md");
    const rail = figures.find(({ name }) => name === "VCC")!;
    expect(rail).toMatchObject({ unit: "V", nominal: 13.8 });
    expect(rail.lowest).toBeCloseTo(12.42, 9);
    expect(rail.highest).toBeCloseTo(15.18, 9);
  });

  test("steps say what a reader sees", async () => {
    const { stages } = await modelOf("heron", "heron.md");
    const step = stages[0]!.steps.find(({ number }) => number === "1.5")!;
    expect(step.text).toBe(
      "Mark two of the four that are left for Y5 and Y6, those nearest to the filter. The last two are spares.",
    );
    const texts = stages.flatMap(({ steps }) => steps.map(({ text }) => text)).join("\n");
    expect(texts).not.toMatch(/[{}]|\[\w+:/);
  });
});

test("long lists come in stretches, and are written as JSON.stringify writes them", () => {
  const list = (length: number) =>
    Array.from({ length }, (_, i) => ({ number: i, texts: ["a\nb"] }));
  for (const object of [{}, { a: undefined }, { a: [], b: list(200), c: list(401), d: "x" }]) {
    const stretches = [...jsonText(object)];
    expect(stretches.join("")).toBe(`${JSON.stringify(object, undefined, 2)}\n`);
    expect(Math.max(...stretches.map(({ length }) => length))).toBeLessThan(20_000);
  }
});

test("infinities and unread values are null", async () => {
  const text =
    "---\nparts: p.csv\n---\n## A\n1. Fit [R1] and see {1 V / 0 A}, {Unknown}.\n--- file: p.csv\nDesignator,Value\nR1,whatever\n";
  const model = JSON.parse((await publishFixture(text, ["json"])).text("guide.json")) as Model;
  expect(problemsOf(model)).toEqual([]);
  expect(model.parts[0]).toMatchObject({ text: "whatever", value: null, board: null });
  expect(model.figures.map(({ nominal }) => nominal)).toEqual([null, null]);
});

test.each([
  ["file:///kit/a.md", "file:///kit/b.md", "b.md"],
  ["file:///home/x/kit/a.md", "file:///home/x/lists/p%20q.csv", "../lists/p q.csv"],
  ["file:///home/x/kit/a.md", "file:///home/x/kit/sub/c.md", "sub/c.md"],
  ["file:///a.md", "https://example.com/x/c.csv", "c.csv"],
])("%s sees %s as %s", (from, to, path) => {
  expect(pathFromGuide(from, to)).toBe(path);
});
