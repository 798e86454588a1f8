/** `kitquill publish` as a process: what it writes, what it replaces, and what it leaves alone. */
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { Cli } from "./cli.ts";

let cli: Cli;
beforeAll(async () => {
  cli = await Cli.build();
});
afterAll(() => cli.remove());

const GUIDE = `---
title: Blinker
language: en
parts: parts.csv
tools: [soldering iron]
checks: { hazard-missing: off }
---

# Blinker

## Board

1. Solder the resistors [R1, R2].
2. Screw the board down. [4 × M3x6]
3. Measure {read V(TP1) < 5 V}.
`;
const LIST = 'Designator,Quantity,Value,Package\n"R1, R2",2,4k7,DIN0207\n,4,M3x6,\n';
const KIT = { "guide.md": GUIDE, "parts.csv": LIST };

const FILES = [
  "guide.html",
  "guide.json",
  "guide.md",
  "guide.schema.json",
  "packing-list.csv",
  "packing-list.html",
  "test-record.csv",
  "test-record.html",
  "tools.csv",
];

function contents(folder: string): ReadonlyMap<string, string> {
  const names = readdirSync(folder).sort();
  return new Map(names.map((name) => [name, readFileSync(join(folder, name), "utf8")]));
}

test("writes all outputs beside the guide, the same byte for byte each time", async () => {
  const folder = cli.folder(KIT);
  const first = await cli.run(folder, "publish", "guide.md");
  expect([first.code, first.err]).toEqual([0, ""]);
  const out = join(folder, "guide-published");
  const before = contents(out);
  expect([...before.keys()]).toEqual(expect.arrayContaining(FILES));
  for (const name of before.keys()) expect(first.out).toContain(`guide-published/${name}\n`);
  // Its own files are replaced without being forced.
  expect((await cli.run(folder, "publish", "guide.md")).code).toBe(0);
  expect(contents(out)).toEqual(before);
  expect(readdirSync(folder).sort()).toEqual(["guide-published", "guide.md", "parts.csv"]);
});

test("replaces what it wrote of an older guide", async () => {
  const folder = cli.folder(KIT);
  await cli.run(folder, "publish", "guide.md", "--out", "out");
  writeFileSync(join(folder, "parts.csv"), LIST.replace("4k7", "5k6"));
  expect((await cli.run(folder, "publish", "guide.md", "--out", "out")).code).toBe(0);
  expect(readFileSync(join(folder, "out/packing-list.csv"), "utf8")).toContain("5.6 kΩ");
});

test("two guides do not replace each other's files in one folder", async () => {
  const other = GUIDE.replaceAll("Blinker", "Flasher & Co");
  const folder = cli.folder({ ...KIT, "other.md": other });
  const args = ["--out", "out", "--only"];
  await cli.run(folder, "publish", "guide.md", ...args, "guide");
  await cli.run(folder, "publish", "other.md", ...args, "json");
  const before = contents(join(folder, "out"));
  const refused = await cli.run(folder, "publish", "other.md", "--out", "out");
  expect(refused.code).toBe(2);
  expect(refused.err).toContain("`guide.html` is there and was published from a guide of another");
  expect(contents(join(folder, "out"))).toEqual(before);
  const first = await cli.run(folder, "publish", "guide.md", "--out", "out");
  expect(first.err).toContain("`guide.json` is there and was published from a guide of another");
  for (const only of ["packing", "tools", "record", "narration"]) {
    await cli.run(folder, "publish", "guide.md", ...args, only);
    expect((await cli.run(folder, "publish", "guide.md", ...args, only)).code).toBe(0);
    const { err } = await cli.run(folder, "publish", "other.md", ...args, only);
    expect(err).toContain("from a guide of another title");
  }
  const again = await cli.run(folder, "publish", "other.md", ...args, "json");
  expect([again.code, again.err]).toEqual([0, ""]);
  expect((await cli.run(folder, "publish", "other.md", "--out", "out", "--force")).code).toBe(0);
});

describe("what Kitquill did not make", () => {
  test.each(FILES)("%s is left alone unless forced", async (name) => {
    const folder = cli.folder({ ...KIT, [`out/${name}`]: "mine\n" });
    const refused = await cli.run(folder, "publish", "guide.md", "--out", "out");
    expect(refused.code).toBe(2);
    expect(refused.err).toContain(`\`${name}\` is there and was not made by Kitquill`);
    expect([...contents(join(folder, "out"))]).toEqual([[name, "mine\n"]]);
    const forced = await cli.run(folder, "publish", "guide.md", "--out", "out", "--force");
    expect(forced.code).toBe(0);
    expect(readFileSync(join(folder, "out", name), "utf8")).not.toContain("mine");
  });

  test("a link in the folder is no way out of it", async () => {
    const folder = cli.folder({ ...KIT, "out/x": "", "elsewhere.csv": "mine\n" });
    symlinkSync(join(folder, "elsewhere.csv"), join(folder, "out/tools.csv"));
    const refused = await cli.run(folder, "publish", "guide.md", "--out", "out", "--only", "tools");
    expect(refused.code).toBe(2);
    await cli.run(folder, "publish", "guide.md", "--out", "out", "--only", "tools", "--force");
    expect(readFileSync(join(folder, "elsewhere.csv"), "utf8")).toBe("mine\n");
  });
});

describe("a folder that cannot take the files", () => {
  const files = (folder: string) => readdirSync(folder, { recursive: true }).sort();

  test.each<[string, Readonly<Record<string, string>>, readonly string[], string]>([
    ["a file", {}, ["--out", "parts.csv"], "`parts.csv` cannot be written to: a file of that name"],
    ["below a file", {}, ["--out", "parts.csv/a"], "a file is in the way where a folder should be"],
    [
      "a folder in the place of a file",
      { "out/guide.md/x": "" },
      ["--out", "out", "--force"],
      "`guide.md` is there and is a folder",
    ],
  ])("%s: told in words, and nothing is written", async (_, more, args, message) => {
    const folder = cli.folder({ ...KIT, ...more });
    const before = files(folder);
    const { code, err } = await cli.run(folder, "publish", "guide.md", ...args);
    expect(code).toBe(2);
    expect(err).toContain(message);
    expect(err).toContain("nothing was published");
    expect(files(folder)).toEqual(before);
  });

  test("a link for the pictures: nothing is written, there or here", async () => {
    const shown = GUIDE.replace("[R1, R2].", "[R1, R2].\n\n   ![The board](a.svg)\n");
    const folder = cli.folder({ ...KIT, "guide.md": shown, "a.svg": "<svg/>", "out/x": "" });
    mkdirSync(join(folder, "elsewhere"));
    symlinkSync(join(folder, "elsewhere"), join(folder, "out/pictures"));
    const before = files(folder);
    const { code, err } = await cli.run(folder, "publish", "guide.md", "--out", "out");
    expect(code).toBe(2);
    expect(err).toContain("`pictures` is a link that leads elsewhere");
    expect(files(folder)).toEqual(before);
  });

  test("a link beside the guide is not taken for the usual folder", async () => {
    const folder = cli.folder({ ...KIT, "elsewhere/x": "" });
    symlinkSync(join(folder, "elsewhere"), join(folder, "guide-published"));
    const { code, err } = await cli.run(folder, "publish", "guide.md");
    expect(code).toBe(2);
    expect(err).toContain("`guide-published` is a link that leads elsewhere");
    expect(readdirSync(join(folder, "elsewhere"))).toEqual(["x"]);
  });
});

test("the guide's own source is never replaced, not even by force", async () => {
  const folder = cli.folder(KIT);
  const args = ["publish", "guide.md", "--out", ".", "--only", "markdown", "--force"];
  const { code, err } = await cli.run(folder, ...args);
  expect(code).toBe(2);
  expect(err).toContain("`guide.md` is a source of the guide");
  symlinkSync(folder, join(folder, "here"));
  const byLink = await cli.run(folder, ...args.map((arg) => (arg === "." ? "here" : arg)));
  expect(byLink.err).toContain("`guide.md` is a source of the guide");
  expect(readFileSync(join(folder, "guide.md"), "utf8")).toBe(GUIDE);
});

test("a packing list that disagrees with the parts list is not published", async () => {
  const off = GUIDE.replace("hazard-missing: off", "hazard-missing: off, wrong-count: off");
  const folder = cli.folder({ "guide.md": off, "parts.csv": LIST.replace(",4,", ",3,") });
  const refused = await cli.run(folder, "publish", "guide.md", "--only", "packing");
  expect(refused.code).toBe(1);
  expect(refused.err).toContain("4 of M3x6, but line 3 of the parts list supplies 3");
  expect(refused.err).toContain("nothing was published");
  expect(existsSync(join(folder, "guide-published"))).toBe(false);
  const forced = await cli.run(folder, "publish", "guide.md", "--only", "packing", "--force");
  expect(forced.code).toBe(0);
  const page = readFileSync(join(folder, "guide-published/packing-list.html"), "utf8");
  expect(page).toContain("Do not pack by this list.");
});

test.each<[readonly string[], string]>([
  [["--only", "guide,packng"], "Did you mean `packing`?"],
  [["--only", "pages"], "It takes guide, packing, tools, record, markdown, json"],
  [["--pack-by", "kinds"], "Did you mean `kind`?"],
])("%j cannot be used: %s", async (args, message) => {
  const folder = cli.folder(KIT);
  const { code, err } = await cli.run(folder, "publish", "guide.md", ...args);
  expect(code).toBe(2);
  expect(err).toContain(message);
});

test("only what is asked for is written, grouped as asked for", async () => {
  const folder = cli.folder(KIT);
  const args = ["publish", "guide.md", "--only", "packing,tools", "--pack-by", "kind"];
  expect((await cli.run(folder, ...args)).code).toBe(0);
  const out = contents(join(folder, "guide-published"));
  expect([...out.keys()]).toEqual(["packing-list.csv", "packing-list.html", "tools.csv"]);
  expect(out.get("packing-list.csv")).toContain("Resistors and potentiometers,packed,2");
});

test("what the guide has nothing for is told, and makes no file", async () => {
  const folder = cli.folder({ ...KIT, "guide.md": GUIDE.replace("tools: [soldering iron]\n", "") });
  const { code, out, err } = await cli.run(folder, "publish", "guide.md", "--only", "tools");
  expect([code, out]).toEqual([0, ""]);
  expect(err).toBe("kitquill: nothing was published: the guide has nothing for `tools`.\n");
  expect(existsSync(join(folder, "guide-published"))).toBe(false);
});

test("what readers will not see is told, and stops nothing", async () => {
  const shown = GUIDE.replace("[R1, R2].", "[R1, R2].\n\n   ![A](a.png) ![B](b.png) ![C](c.png)\n");
  const folder = cli.folder({ ...KIT, "guide.md": shown, "a.png": "no picture" });
  writeFileSync(join(folder, "../outside.png"), "secret");
  symlinkSync("../outside.png", join(folder, "b.png"));
  const { code, err } = await cli.run(folder, "publish", "guide.md", "--only", "guide");
  expect(code).toBe(0);
  expect(err.split("\n")).toEqual([
    expect.stringContaining("`a.png` of guide.md is not shown: the file holds no picture"),
    expect.stringContaining(
      "`b.png` of guide.md is not shown: `b.png` is a link to a file outside",
    ),
    "kitquill: Picture `c.png` of guide.md is not shown: there is no such file.",
    "",
  ]);
  const page = readFileSync(join(folder, "guide-published/guide.html"), "utf8");
  expect(page).not.toContain(btoa("secret"));
  expect(page.match(/Picture missing: [ABC]/g)).toEqual(
    ["A", "B", "C"].map((one) => `Picture missing: ${one}`),
  );
});

test("the help names every output", async () => {
  const { out } = await cli.run(cli.folder({}), "publish", "--help");
  for (const name of ["guide", "packing", "tools", "record", "markdown", "json", "narration"]) {
    expect(out).toMatch(new RegExp(`^  ${name} +\\S`, "m"));
  }
});
