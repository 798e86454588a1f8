/** `kitquill compare` as a process: with a guide, and with the old list from git. Kits are inventions. */
import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import Ajv2020 from "ajv/dist/2020.js";
import { parse } from "csv-parse/sync";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { workbook } from "../model/compare/formats.ts";
import { Cli } from "./cli.ts";

const GUIDE = `---
title: Wren
parts: parts.csv
---

# Wren

## Board

1. Solder [R1, R2 = 4k7] flush to the board.
2. Solder [all 100n].
3. Look at R1 again.
`;
const HEADER = "Designator,Value,Package\n";
const OLD = `${HEADER}"R1,R2",4k7,R_0207\nC1,100n,C_Disc_D5.0mm\n`;
const NEW = `${HEADER}"R1,R2",5k6,R_0207\n"C1,C2",100n,C_Disc_D5.0mm\n`;

/** The schema that is published for `--format json`. */
const isAsDescribed = new Ajv2020({ strict: true, allowUnionTypes: true }).compile(
  JSON.parse(readFileSync("server/docs/compare.schema.json", "utf8")),
);

let cli: Cli;
beforeAll(async () => {
  cli = await Cli.build();
});
afterAll(() => cli.remove());

const kit = (files: Readonly<Record<string, string | Uint8Array>> = {}) =>
  cli.folder({ "wren.md": GUIDE, "parts.csv": OLD, "new.csv": NEW, ...files });

describe("with a guide", () => {
  const args = ["compare", "parts.csv", "new.csv", "--guide", "wren.md"];

  test("each thing that is touched is told with its place and fix", async () => {
    const { code, out } = await cli.run(kit(), ...args);
    expect(code).toBe(1);
    expect(out).toBe(`parts.csv → new.csv

Added
  C2: 100n, C_Disc_D5.0mm

Changed
  R1, R2: value 4k7 → 5k6

Steps to reword
  wren.md:10:12 step 1.1: R1 and R2: value 4k7 → 5k6; bands yellow violet red → green blue red.
    fix: Write 5k6, as in the list
  wren.md:12:12 step 1.3: Names R1, which changed (value 4k7 → 5k6): see whether the text still holds.

Sets and matches
  wren.md:11:12 step 1.2: "all 100n" takes in C2 now: 2 parts, before 1.

Packing
  5k6, R_0207: new, 2
  100n, C_Disc_D5.0mm: 1 → 2
  4k7, R_0207: gone, was 2
`);
  });

  test("the change note tells builders of what they do otherwise, and the author of what is due", async () => {
    const { out, err } = await cli.run(kit(), ...args, "--format", "markdown");
    expect(out).toContain("# Change note: Wren\n");
    expect(out).toContain(`## Steps that differ

### 1 Board

- Step 1.1: R1 and R2: value 4k7 → 5k6; bands yellow violet red → green blue red.
`);
    expect(out).not.toContain("see whether");
    expect(out).toContain("## What is in the kit");
    expect(err).toContain("1 place of the guide must be put right before this note is sent");
  });

  test("JSON has the same in fields", async () => {
    const { out } = await cli.run(kit(), ...args, "--format", "json");
    const json = JSON.parse(out);
    isAsDescribed(json);
    expect(isAsDescribed.errors).toBeNull();
    const { touched, packing, changed } = json;
    expect(changed).toHaveLength(2);
    expect(
      touched.map(({ kind, step, line }: Record<string, unknown>) => [kind, step, line]),
    ).toEqual([
      ["step", "1.1", 10],
      ["step", "1.3", 12],
      ["set", "1.2", 11],
    ]);
    expect(touched[0].fixes).toEqual(["Write 5k6, as in the list"]);
    expect(packing).toHaveLength(3);
  });

  test("one that names neither of the lists takes them for its own, if it has one", async () => {
    const folder = kit({ "old.csv": OLD });
    const { out } = await cli.run(folder, "compare", "old.csv", "new.csv", "--guide", "wren.md");
    expect(out).toContain("wren.md:11:12 step 1.2");
    const two = GUIDE.replace("parts: parts.csv", "parts: { a: parts.csv, b: x.csv }");
    const other = kit({ "old.csv": OLD, "x.csv": `${HEADER}R9,1k,R_0207\n`, "wren.md": two });
    const { code, err } = await cli.run(
      other,
      "compare",
      "old.csv",
      "new.csv",
      "--guide",
      "wren.md",
    );
    expect(code).toBe(2);
    expect(err).toContain("names 2 parts lists, and neither of the two is one of them");
  });
});

describe("workbooks", () => {
  const rows = (csv: string) => workbook(parse(csv));
  const inCsv = ["compare", "parts.csv", "new.csv", "--guide", "wren.md"];

  test.each(["parts.xlsx", "parts.xlsx#Kit"])("named %s in the guide", async (named) => {
    const guide = GUIDE.replace("parts.csv", named);
    const folder = kit({ "wren.md": guide, "parts.xlsx": rows(OLD), "new.xlsx": rows(NEW) });
    const told = await cli.run(folder, "compare", named, "new.xlsx", "--guide", "wren.md");
    const { out, code } = await cli.run(kit(), ...inCsv);
    expect(told).toEqual({
      code,
      out: out.replace("parts.csv → new.csv", `${named} → new.xlsx`),
      err: "",
    });
  });

  test("against a list in another format", async () => {
    const folder = kit({ "new.xlsx": rows(NEW) });
    const told = await cli.run(folder, "compare", "parts.csv", "new.xlsx", "--guide", "wren.md");
    const { out } = await cli.run(kit(), ...inCsv);
    expect(told.out).toBe(out.replace("new.csv", "new.xlsx"));
    const same = kit({ "again.xlsx": rows(OLD) });
    const { code } = await cli.run(same, "compare", "parts.csv", "again.xlsx");
    expect(code).toBe(0);
  });

  test("a sheet that is not there, or a file cut off, is told in one sentence", async () => {
    const folder = kit({ "new.xlsx": rows(NEW), "cut.xlsx": rows(NEW).subarray(0, 700) });
    for (const [name, says] of [
      ["new.xlsx#Nope", "has no sheet `Nope`. It has `Kit`"],
      ["cut.xlsx", "damaged or cut off"],
    ] as const) {
      const { code, out, err } = await cli.run(folder, "compare", "parts.csv", name);
      expect([code, out]).toEqual([2, ""]);
      expect(err).toContain(`\`${name}\` cannot be used as a parts list.`);
      expect(err).toContain(says);
    }
  });
});

test("of a list with hundreds of faults the first are told", async () => {
  const folder = kit({ "bad.csv": HEADER + "R1,4k7,R_0207\n".repeat(301) });
  const { code, err } = await cli.run(folder, "compare", "parts.csv", "bad.csv");
  const told = err.trimEnd().split("\n");
  expect(code).toBe(1);
  expect(told).toHaveLength(51);
  expect(told[0]).toMatch(/^bad\.csv:3:1 repeated-designator R1 is listed on line 2 already/);
  expect(told.at(-1)).toBe("bad.csv: 250 more; put these right first.");
});

describe("with a revision of git", () => {
  const git = (folder: string, ...args: readonly string[]) =>
    execFileSync("git", ["-c", "user.name=a", "-c", "user.email=a@example.com", ...args], {
      cwd: folder,
    });

  function repository(): string {
    const folder = kit();
    git(folder, "init", "-q");
    git(folder, "add", ".");
    git(folder, "commit", "-q", "-m", "first");
    git(folder, "tag", "v1");
    execFileSync("cp", ["new.csv", "parts.csv"], { cwd: folder });
    return folder;
  }

  test("the list is compared with itself as it was", async () => {
    const folder = repository();
    const { out } = await cli.run(folder, "compare", "parts.csv", "--old-rev", "v1");
    expect(out).toContain("parts.csv (v1) → parts.csv");
    expect(out).toContain("R1, R2: value 4k7 → 5k6");
  });

  test.each([
    ["no-such", "git says"],
    ["--output=x", "needs a value"],
    ["-x", "needs a value"],
  ])("%s is refused with a reason", async (revision, says) => {
    const { code, err } = await cli.run(
      repository(),
      "compare",
      "parts.csv",
      "--old-rev",
      revision,
    );
    expect(code).toBe(2);
    expect(err).toContain(says);
  });

  test("what git would take for an option never reaches it", async () => {
    const { code, err } = await cli.run(repository(), "compare", "parts.csv", "--old-rev=--help");
    expect(code).toBe(2);
    expect(err).toContain("is no revision of git");
  });
});
