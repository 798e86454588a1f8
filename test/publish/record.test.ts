/** Test record and tools as files of their own, by what they say. */
import { load } from "cheerio";
import { parse } from "csv-parse/sync";
import { HtmlValidate } from "html-validate";
import { beforeAll, describe, expect, test } from "vitest";
import { fixture } from "../fixture.ts";
import { type Published, publishFiles, publishFixture, publishSample, seen } from "./published.ts";

type Row = Readonly<Record<string, string>>;

function rowsOf(published: Published, name: string): Row[] {
  return parse(published.text(name), { columns: true, bom: true }) as Row[];
}

describe("Heron's test record", () => {
  let published: Published;
  beforeAll(async () => {
    published = await publishSample("heron", "heron.md", ["record", "guide"]);
  });

  test("has every reading of the guide once, on paper and as rows", () => {
    const fields = published.page()("[data-reading]").toArray();
    const names = fields.map((one) => published.page()(one).attr("data-reading"));
    const page = load(published.text("test-record.html"));
    expect(
      page("tbody .ref")
        .toArray()
        .map((one) => page(one).text()),
    ).toEqual(names);
    expect(rowsOf(published, "test-record.csv").map(({ reading }) => reading)).toEqual(names);
    expect(names).toHaveLength(20);
  });

  test("gives limits as numbers in the unit that is read", () => {
    const rows = rowsOf(published, "test-record.csv");
    // {read V(TP1) = V8 ± 5 %} with a rail of 8 V, {read R(HS101) > 10 MΩ} and so on in the guide.
    expect(rows.find(({ reading }) => reading === "V(TP1)")).toMatchObject({
      step: "Step 6.5",
      lowest: "7.6",
      highest: "8.4",
      unit: "V",
      value: "",
    });
    expect(rows.find(({ reading }) => reading === "R(HS101)")).toMatchObject({
      lowest: "10",
      highest: "",
      unit: "MΩ",
    });
  });

  test("is valid HTML with room for who, when, with what, and remarks", async () => {
    const text = published.text("test-record.html");
    const validator = new HtmlValidate({
      extends: ["html-validate:recommended"],
      rules: { "no-trailing-whitespace": "off" },
    });
    const { results } = await validator.validateString(text);
    expect(results.flatMap(({ messages }) => messages)).toEqual([]);
    const page = load(text);
    const labels = page(".blanks p")
      .toArray()
      .map((one) => seen(page(one).text()));
    expect(labels).toEqual(["Serial number", "Date", "Name", "Instruments", "Signature"]);
    expect(page("h2").last().text()).toBe("Remarks");
  });
});

test("a guide without readings has no test record", async () => {
  const text =
    "---\nparts: p.csv\n---\n## A\n1. Fit [R1].\n--- file: p.csv\nDesignator,Value\nR1,1k\n";
  expect((await publishFixture(text, ["record"])).files).toEqual([]);
});

test("published in spite of errors the record says so", async () => {
  const text =
    "---\nlanguage: de\nparts: p.csv\n---\n## A\n1. Messe {read V(TP1) < 5 V}.\n--- file: p.csv\nDesignator,Value\nR1,1k\n";
  const published = await publishFiles(fixture(text).files, "guide.md", ["record"], { errors: 2 });
  const page = load(published.text("test-record.html"));
  expect(page(".forced").text()).toContain("Fehler fand (2)");
  expect(page("thead").text()).toContain("Dein Wert");
});

test("tools come with the steps that need them, in a form that no spreadsheet takes for a number", async () => {
  const published = await publishSample("heron", "heron.md", ["tools"]);
  const rows = rowsOf(published, "tools.csv");
  const guide = "Heron 40, a 7 MHz CW transceiver";
  expect(rows).toContainEqual({ guide, kind: "tool", name: "clip lead", neededIn: "Step 11.4" });
  expect(rows).toContainEqual({
    guide,
    kind: "own",
    name: "dummy load 50 Ω, 10 W",
    neededIn: "Step 11.3, 11.16, 11.17, 13.1, 13.8",
  });
  expect(rows.every(({ neededIn }) => !/^[\d.]+$/.test(neededIn!))).toBe(true);
  // Listed for the whole guide: the few steps whose words name it are not all that take it.
  expect(rows).toContainEqual({ guide, kind: "tool", name: "multimeter", neededIn: "" });
});

test("what the kit brings along is nothing to be brought, in whatever words a step names it", async () => {
  const published = await publishSample("plover", "plover.de.md", ["tools"]);
  const names = rowsOf(published, "tools.csv").map(({ name }) => name);
  expect(names).toContain("Heißluftgebläse");
  expect(names).not.toContain("Schrumpfschlauch");
});
