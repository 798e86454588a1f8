/** `kitquill match`: files as labs write them, the best sets, and messages at their place. */
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import {
  isProblem,
  type Lot,
  readReadings,
} from "../../server/src/features/matching/readReadings.ts";
import {
  readReading,
  unitInHeader,
  wholeReadings,
} from "../../server/src/trade/matching/readings.ts";
import { Cli } from "./cli.ts";

function lotOf(text: string, column?: string): Lot {
  const lot = readReadings(text, column);
  if (isProblem(lot)) throw new Error(lot.message);
  return lot;
}

function shown({ readings }: Lot): string[] {
  return readings.map(({ label, figures }) => `${label}=${figures}`);
}

test.each<[string, string, readonly string[], string]>([
  ["bare", "1.5\n2.5\n", ["1=1.5", "2=2.5"], ""],
  ["a decimal comma alone on its line", "0,6012\n0,6047\n", ["1=0.6012", "2=0.6047"], ""],
  ["with a header and decimal comma", "Vbe (V)\n0,6012\n0,6047\n", ["1=0.6012", "2=0.6047"], "V"],
  ["parts that are counted, parted by commas", "1,601\n2,604\n", ["1=601", "2=604"], ""],
  ["two words in the header, so two columns", "a,b\n1,2\n2,4\n", ["1=2", "2=4"], ""],
  ["two words in quotes are one header", '"Vgs, V"\n2,31\n3,44\n', ["1=2.31", "2=3.44"], ""],
  ["one word in the header, so one column", "hFE\n1,5\n2,5\n", ["1=1.5", "2=2.5"], ""],
  ["a decimal comma in some lines only", "312,5\n298\n", ["1=312.5", "2=298"], ""],
  ["a nought after the comma", "2,05\n3,1\n", ["1=2.05", "2=3.1"], ""],
  ["a sign before the comma", "-2,5\n3,1\n", ["1=-2.5", "2=3.1"], ""],
  ["a blank tab behind a line", "1,601\t\n2,604\n", ["1=601", "2=604"], ""],
  ["a semicolon in the header only", "hFE; cold\n4,31\n5,12\n", ["1=4.31", "2=5.12"], ""],
  ["labelled", "Part,f/Hz\nY1,4915230.1\nY2,4915190\n", ["Y1=4915230.1", "Y2=4915190"], "Hz"],
  ["semicolons", "Nr;Ugs in V\n1;3,41\n2;3,5\n", ["1=3.41", "2=3.5"], "V"],
  ["tabs and blank lines", "A\t1,5\r\n\r\nB\t2,5\r\n", ["A=1.5", "B=2.5"], ""],
  ["units in the cells", "a,12 mV\nb,13.5 mV\n", ["a=12", "b=13.5"], "mV"],
  ["powers of ten", "1.234E-11 F\n1.2e-11 F\n", ["1=0.00000000001234", "2=0.000000000012"], "F"],
  ["labels that repeat are no labels", "x,1\nx,2\n", ["1=1", "2=2"], ""],
  ["quoted", '"Q1","0,61"\n"Q2","0,62"\n', ["Q1=0.61", "Q2=0.62"], ""],
])("readings are read: %s", (_, text, readings, unit) => {
  const lot = lotOf(text);
  expect(shown(lot)).toEqual(readings);
  expect(lot.unit).toBe(unit);
});

test("a column is chosen by header or number", () => {
  const text = "part,f,Q\na,1.5,7\nb,2.5,8\n";
  expect(shown(lotOf(text, "q"))).toEqual(["a=7", "b=8"]);
  expect(shown(lotOf(text, "2"))).toEqual(["a=1.5", "b=2.5"]);
  expect(readReadings(text, undefined)).toMatchObject({
    message: expect.stringContaining("`f` and `Q`"),
  });
  expect(readReadings(text, "x")).toMatchObject({
    message: expect.stringContaining("`part`, `f`, `Q`"),
  });
});

test.each<[string, number, string]>([
  ["1\n2\nx1\n", 4, "`x1` is no reading"],
  ["a,1\nb,\nc,3\n", 6, "A reading is missing"],
  ["a,1\nb\nc,3\n", 5, "A reading is missing"],
  ["1 mV\n2 V\n", 5, "in V, those before it in mV"],
  ["Nr;V\n1;\n2;\n", 7, "A reading is missing"],
  [`1\n${"x1 ".repeat(20)}\n`, 2, "`x1 x1 x1 x1 x1 x1 x1 x1 x1 x1…` is no reading"],
  ["a,b\nx,y\nz,w\n", 4, "`x` is no reading"],
  ["4k7\n4.7\n", 0, "`4k7` is no reading"],
  ["", 0, "holds no readings"],
  ["head\n", 0, "holds no readings"],
  ["312,5\n298,1\n", 0, "Begin the file with a header line"],
  ["\n7,431\n3,429\n", 1, "decimal comma or parts two columns"],
  ["Vgs, in V, cold\n2,31\n3,44\n", 0, "decimal comma or parts two columns"],
  ["Vgs, V\n2,31\n3,44\n", 9, "put quotes round the header"],
])("a slip in %j is told at %i", (text, at, message) => {
  const problem = readReadings(text, undefined);
  expect(problem).toMatchObject({ at, message: expect.stringContaining(message) });
});

test.each([
  ["−0,5", "-0.5", ""],
  ["1 000,5 Hz", "1000.5", "Hz"],
  ["6.012E-1 V", "0.6012", "V"],
  ["12e2", "1200", ""],
  ["-6.012E-1", "-0.6012", ""],
  ["1.2345e2 mV", "123.45", "mV"],
  [".5E3", "500", ""],
  ["55 %", "55", "%"],
])("the reading %s is %s %s", (text, figures, unit) => {
  expect(readReading(text)).toEqual({ figures, unit });
});

test.each(["4k7", "1.2.3", "1,234,567", "V 5", "", "1e", "5 V 6"])("%j is no reading", (text) => {
  expect(readReading(text)).toBeUndefined();
});

test.each([
  ["Vbe (mV)", "mV"],
  ["f [Hz]", "Hz"],
  ["Ugs / V", "V"],
  ["U in mV", "mV"],
  ["Gain", ""],
  ["hFE (2)", ""],
])("the header %s names the unit %j", (header, unit) => {
  expect(unitInHeader(header)).toBe(unit);
});

test("small and exact readings stay whole numbers", () => {
  expect(wholeReadings(["0.00000000001234", "0.000000000012"]).whole).toEqual([1234, 1200]);
  // Of more digits than a number holds exactly, those that it does.
  const { whole, places, inUnits } = wholeReadings(["0.60123456789012345", "12345.5"]);
  expect(whole.every(Number.isSafeInteger)).toBe(true);
  expect(places).toBe(11);
  expect(inUnits(whole[1]! - whole[0]!)).toBeCloseTo(12344.89876543211, 10);
});

describe("as a process", () => {
  let cli: Cli;
  beforeAll(async () => {
    cli = await Cli.build();
  }, 120_000);
  afterAll(() => cli.remove());

  /** Base-emitter voltages; least totals 0.8, 1.6 and 2.5 mV worked by hand and with NetworkX. */
  const VBE = "Part;Vbe (V)\nQ1;0,6012\nQ2;0,6047\nQ3;0,5987\nQ4;0,6021\nQ5;0,6039\nQ6;0,5995\n";

  test("the best sets come as text, CSV and JSON", async () => {
    const folder = cli.folder({ "vbe.csv": VBE });
    const text = await cli.run(folder, "match", "vbe.csv", "--sets", "2", "--of", "2");
    expect(text.code).toBe(0);
    expect(text.out).toContain("6 readings from column Vbe (V), in V");
    expect(text.out).toMatch(/1 +0\.0008 V +Q3 \(0\.5987\), Q6 \(0\.5995\)/);
    expect(text.out).toContain("Spread of all sets together: 0.0016 V, at most 0.0008 V in a set.");
    expect(text.out).toContain("Left over: Q1, Q4.");
    const csv = await cli.run(folder, "match", "vbe.csv", "--sets", "1", "--format", "csv");
    expect(csv.out.split("\r\n").slice(0, 3)).toEqual([
      "part,reading,unit,set,spread",
      "Q3,0.5987,V,1,0.0008",
      "Q6,0.5995,V,1,0.0008",
    ]);
    const json = await cli.run(folder, "match", "vbe.csv", "--format", "json");
    expect(JSON.parse(json.out)).toMatchObject({ unit: "V", total: 0.0025, left: [], tied: false });
  });

  test("ties are told", async () => {
    const folder = cli.folder({ "r.csv": "1\n2\n3\n" });
    const { out } = await cli.run(folder, "match", "r.csv", "--sets", "1");
    expect(out).toContain("Another choice has the same sum.");
  });

  test.each<[readonly string[], string]>([
    [["r.csv", "--sets", "4"], "4 sets of 2 need 8 readings; `r.csv` has 3."],
    [["r.csv", "--sets", "1", "--of", "4"], "1 set of 4 needs 4 readings; `r.csv` has 3."],
    [["bad.csv"], "bad.csv:2:3 `n/a` is no reading"],
    [["none.csv"], "There is no file `none.csv`."],
    [["bad.cvs"], "There is no file `bad.cvs`. Did you mean `bad.csv`?"],
    [["r.csv", "--sets", "0"], "1 or more"],
    [["r.csv", "--of", "1"], "2 or more"],
    [["r.csv", "--sets", "two"], "needs a whole number"],
    [[], "needs a file of readings"],
    [["r.csv", "--formt", "csv"], "Did you mean `--format`?"],
  ])("%j cannot be used: %s", async (args, message) => {
    const folder = cli.folder({ "r.csv": "1\n2\n3\n", "bad.csv": "a,1\nb,n/a\nc,2\n" });
    const { code, out, err } = await cli.run(folder, "match", ...args);
    expect([code, out]).toEqual([2, ""]);
    expect(err).toContain(message);
  });

  test("labels are no formulas in CSV", async () => {
    const folder = cli.folder({ "r.csv": "=1+1,1\n@x,2\n" });
    const { out } = await cli.run(folder, "match", "r.csv", "--format", "csv");
    expect(out).toContain("'=1+1,1,");
    expect(out).toContain("'@x,2,");
  });

  test("ten thousand readings in thousands of pairs take seconds, more are refused", async () => {
    const many = (count: number) =>
      Array.from({ length: count }, (_, i) => `${(i * 7919) % 100_003}`);
    const folder = cli.folder({
      "a.csv": many(10_000).join("\n"),
      "b.csv": many(20_000).join("\n"),
    });
    const picked = await cli.run(folder, "match", "a.csv", "--format", "csv");
    expect(picked.code).toBe(0);
    expect(picked.out.split("\r\n")).toHaveLength(10_002);
    const refused = await cli.run(folder, "match", "b.csv");
    expect(refused.code).toBe(2);
    expect(refused.err).toContain("more than can be weighed at once");
  });
});
