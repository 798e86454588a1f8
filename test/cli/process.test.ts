import { execFileSync, spawnSync } from "node:child_process";
import { chmodSync, readFileSync, statSync, symlinkSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { CODES } from "../../server/src/checks/codes.ts";
import { Cli } from "./cli.ts";

let cli: Cli;
beforeAll(async () => {
  cli = await Cli.build();
});
afterAll(() => cli.remove());

const parts =
  'Designator,Quantity,Value,Package\n"R1, R2",2,4k7,R_Axial_DIN0207_L6.3mm_D2.5mm\nC1,1,100n,C_Disc_D5.0mm_W2.5mm_H4.0mm\n';
const guide = `---
title: Blinker
parts: parts.csv
checks: { hazard-missing: off }
---

# Blinker

## Board

1. Solder the resistors [R1, R2].
2. Solder [C1].
`;
const clean = { "guide.md": guide, "parts.csv": parts };
const faulty = { ...clean, "guide.md": guide.replace("[C1]", "[C1, R7]") };

test.skipIf(process.platform === "win32")(
  "the bundle is a program by itself, as a link on the path runs it",
  async () => {
    chmodSync(cli.bundle, 0o755);
    const folder = cli.folder(clean);
    symlinkSync(cli.bundle, join(folder, "kitquill"));
    const { code, out } = await cli.spawn(join(folder, "kitquill"), ["check"], folder);
    expect([code, out]).toEqual([0, "1 guide checked, 2 steps: nothing found.\n"]);
  },
);

describe("kitquill explain", () => {
  test("prints the page of a check, and lists them all", async () => {
    const folder = cli.folder({});
    const page = await cli.run(folder, "explain", "height-order");
    expect(page.out).toBe(readFileSync("server/docs/checks/height-order.md", "utf8"));
    const { out } = await cli.run(folder, "explain");
    const codes = out
      .trimEnd()
      .split("\n")
      .map((line) => line.split(" ")[0]);
    expect(codes).toEqual(CODES);
    expect(out).toContain("height-order         A part is fitted after a taller one");
  });

  test("names the code that was meant", async () => {
    const { code, out, err } = await cli.run(cli.folder({}), "explain", "heigt-order");
    expect([code, out]).toEqual([2, ""]);
    expect(err).toBe(
      "kitquill: No check has the code `heigt-order`. Did you mean `height-order`?\n",
    );
  });
});

describe("kitquill check", () => {
  test("ends with 0 and says so when a guide is in order", async () => {
    const { code, out, err } = await cli.run(cli.folder(clean), "check");
    expect({ code, out, err }).toEqual({
      code: 0,
      out: "1 guide checked, 2 steps: nothing found.\n",
      err: "",
    });
  });

  test("ends with 1 and shows the place when there is an error", async () => {
    const { code, out } = await cli.run(cli.folder(faulty), "check", "guide.md");
    expect(code).toBe(1);
    expect(out).toMatch(
      /^guide\.md:12:16 error unknown-part .*R7.*\n {2}12 \| 2\. Solder \[C1, R7\]\.\n {5}\| {16}\^\^\n/,
    );
    expect(out).toMatch(/\n1 guide checked, 2 steps: 1 error.*\.\n$/);
  });

  test("prints nothing but the document as JSON, with one-based UTF-16 columns", async () => {
    const text = faulty["guide.md"].replace("[C1, R7]", "🔧 [C1, R7]").replaceAll("\n", "\r\n");
    const folder = cli.folder({ ...faulty, "guide.md": `\uFEFF${text}` });
    const { code, out, err } = await cli.run(folder, "check", "--format", "json");
    expect([code, err]).toEqual([1, ""]);
    const { files, summary } = JSON.parse(out);
    expect(summary).toEqual({ files: 1, errors: 1, warnings: 0 });
    expect(files[0]).toMatchObject({
      file: "guide.md",
      steps: 2,
      parts: { listed: 3, fitted: 3, missing: 0 },
    });
    expect(files[0].findings).toEqual([
      expect.objectContaining({
        code: "unknown-part",
        file: "guide.md",
        line: 12,
        column: 19,
        endLine: 12,
        endColumn: 21,
      }),
    ]);
  });

  test("reports a fault of the list in the list, beside the guide's", async () => {
    const folder = cli.folder({
      "kit/guide.md": guide.replace("[C1]", "it"),
      "kit/parts.csv": parts,
    });
    const { code, out } = await cli.run(folder, "check", "--format", "json");
    expect(code).toBe(1);
    const places = JSON.parse(out).files[0].findings.map(
      (one: { code: string; file: string; line: number }) => [one.code, one.file, one.line],
    );
    expect(places).toContainEqual(["missing-part", "kit/guide.md", 3]);
    expect(places).toContainEqual(["missing-part", "kit/parts.csv", 3]);
  });

  test("finds guides below a folder and respects .gitignore", async () => {
    const folder = cli.folder({
      ".gitignore": "old/\n",
      "a/guide.md": guide,
      "a/parts.csv": parts,
      "old/guide.md": guide,
      "notes.md": "# Notes\n\n[R1]\n",
    });
    expect((await cli.run(folder, "check")).out).toBe("1 guide checked, 2 steps: nothing found.\n");
    const { out } = await cli.run(folder, "check", "old/guide.md", "--format=json");
    expect(JSON.parse(out).files[0].findings[0]).toMatchObject({
      code: "unreadable-list",
      line: 3,
    });
  });

  test("ends with 1 when there are more warnings than allowed", async () => {
    const folder = cli.folder({
      ...faulty,
      "guide.md": faulty["guide.md"].replace(
        "hazard-missing: off",
        "hazard-missing: off, unknown-part: warning",
      ),
    });
    expect((await cli.run(folder, "check")).code).toBe(0);
    expect((await cli.run(folder, "check", "--max-warnings", "1")).code).toBe(0);
    const { code, err } = await cli.run(folder, "check", "--max-warnings", "0");
    expect([code, err]).toEqual([1, "kitquill: 1 warning; 0 are allowed.\n"]);
  });

  test("ends with 2 for input that cannot be used, and checks the rest", async () => {
    const folder = cli.folder({ ...clean, "page.md": "# Page\n", "empty/x.txt": "" });
    const { code, out, err } = await cli.run(
      folder,
      "check",
      "nowhere.md",
      "guides.md",
      "page.md",
      "parts.csv",
      "empty",
      "guide.md",
    );
    expect(code).toBe(2);
    expect(out).toBe("1 guide checked, 2 steps: nothing found.\n");
    const [missing, misnamed, page, list, empty] = err.split("\n");
    expect(missing).toContain("There is no file or folder `nowhere.md`");
    expect(misnamed).toContain("no file or folder `guides.md`. Did you mean `guide.md`?");
    expect(page).toContain("`page.md` is no guide: its front matter has no key `parts`");
    expect(list).toContain("`kitquill list parts parts.csv`");
    expect(page).toContain("`kitquill adopt page.md --parts LIST` makes a guide");
    expect(empty).toContain("There is no guide in `empty`");
    expect(empty).toContain("`kitquill start LIST` begins one");
  });

  test("does not read a list outside the repository unless told to", async () => {
    const folder = cli.folder({
      "repo/.git/HEAD": "",
      "repo/guide.md": guide.replace("parts.csv", "../parts.csv"),
      "parts.csv": parts,
    });
    const refused = await cli.run(join(folder, "repo"), "check");
    expect([refused.code, refused.out]).toEqual([1, expect.stringContaining("outside the folder")]);
    expect((await cli.run(join(folder, "repo"), "check", "--lists-outside")).code).toBe(0);
  });

  test("does not follow a link out of the repository", async () => {
    const folder = cli.folder({
      "repo/.git/HEAD": "",
      "repo/guide.md": guide,
      "secret.csv": parts,
    });
    symlinkSync(join(folder, "secret.csv"), join(folder, "repo", "parts.csv"));
    const { code, out } = await cli.run(join(folder, "repo"), "check");
    expect([code, out]).toEqual([1, expect.stringContaining("link to a file outside")]);
  });

  test("gives SARIF and GitHub commands for the same finding", async () => {
    const folder = cli.folder(faulty);
    const sarif = JSON.parse((await cli.run(folder, "check", "--format", "sarif")).out);
    const region = { startLine: 12, startColumn: 16, endLine: 12, endColumn: 18 };
    expect(sarif.runs[0].results[0].locations[0].physicalLocation.region).toEqual(region);
    const github = await cli.run(folder, "check", "--format", "github");
    expect(github.out).toContain(
      "::error file=guide.md,line=12,endLine=12,col=16,endColumn=18,title=unknown-part::",
    );
  });
});

describe("on a terminal", () => {
  const hasScript = spawnSync("script", ["--version"]).status === 0;

  function onTerminal(folder: string, env: Record<string, string> = {}, ...args: string[]) {
    const line = [process.execPath, cli.bundle, "check", ...args]
      .map((one) => `'${one}'`)
      .join(" ");
    return cli.spawn("script", ["-qec", line, "/dev/null"], folder, { TERM: "xterm", ...env });
  }

  test.skipIf(!hasScript)(
    "output has colours and progress, and NO_COLOR takes the colours away",
    async () => {
      const many = Object.fromEntries(
        Array.from({ length: 5 }, (_, i) => [`kit${i}/guide.md`, faulty["guide.md"]] as const),
      );
      const folder = cli.folder(many);
      const { out } = await onTerminal(folder);
      expect(out).toContain("\u001b[31merror\u001b[39m");
      expect(out).toContain("Checking 5 of 5: kit4/guide.md");
      const sober = await onTerminal(folder, { NO_COLOR: "1" });
      expect(sober.out).not.toMatch(/\u001b\[\d+m/);
      expect(sober.out).toContain("error");
      expect((await onTerminal(folder, { TERM: "dumb" })).out).not.toContain("\u001b");
    },
  );

  test("a pipe that closes early is no error", async () => {
    const long = Array.from({ length: 900 }, (_, i) => `${i + 1}. Solder [R${i + 10}].`).join("\n");
    const folder = cli.folder({ ...clean, "guide.md": `${guide}${long}\n` });
    const line = `"$0" "$1" check; echo "code $?" >&2`;
    const { out, err } = await cli.spawn(
      "sh",
      ["-c", `(${line}) | head -1`, process.execPath, cli.bundle],
      folder,
    );
    expect(out.split("\n")).toHaveLength(2);
    expect(err).not.toContain("EPIPE");
    expect(err).toMatch(/^code [01]\n$/);
  });

  test("all output arrives, however long", async () => {
    const long = Array.from({ length: 990 }, (_, i) => `${i + 1}. Solder [R${i + 10}].`).join("\n");
    const folder = cli.folder({ ...clean, "guide.md": `${guide}${long}\n` });
    const { out } = await cli.run(folder, "check", "--format", "json");
    expect(out.length).toBeGreaterThan(200_000);
    expect(JSON.parse(out).files[0].findings.length).toBeGreaterThanOrEqual(990);
  });

  test("counts the findings that are too many to be shown", async () => {
    const long = Array.from({ length: 1500 }, (_, i) => `${i + 1}. Solder [R${i + 10}].`).join(
      "\n",
    );
    const folder = cli.folder({ ...clean, "guide.md": `${guide}${long}\n` });
    const { files, summary } = JSON.parse((await cli.run(folder, "check", "--format=json")).out);
    expect(summary).toEqual({ files: 1, errors: 1500, warnings: 0 });
    expect(files[0].findings).toHaveLength(1001);
    expect(files[0].findings.map((one: { code: string }) => one.code)).toContain("more-findings");
  });

  test("calls a finding fixable only where a fix exists", async () => {
    const order = guide.replace("[R1, R2]", "[C1]").replace("Solder [C1].\n", "Solder [R1, R2].\n");
    const noted = order.replace("2. ", "> **CAUTION: hot surface.** It burns. Wait.\n\n2. ");
    for (const [text, expected] of [
      [order, true],
      [noted, false],
    ] as const) {
      const folder = cli.folder({ ...clean, "guide.md": text });
      const { files } = JSON.parse((await cli.run(folder, "check", "--format=json")).out);
      const found = files[0].findings.find((one: { code: string }) => one.code === "height-order");
      expect(found.fixable).toBe(expected);
    }
  });
});

describe("kitquill check --fix", () => {
  const fixable = guide.replace("[R1, R2]", "[R1~R2]");
  const mended = (text: string) => text.replace("R1~R2", "R1–R2");

  test("applies safe fixes and reports the rest", async () => {
    const folder = cli.folder({ ...clean, "guide.md": fixable });
    const before = statSync(join(folder, "parts.csv")).mtimeMs;
    const { code, out, err } = await cli.run(folder, "check", "--fix");
    expect([code, err]).toEqual([0, ""]);
    expect(out).toBe("1 guide checked, 2 steps: nothing found. 1 fixed.\n");
    expect(readFileSync(join(folder, "guide.md"), "utf8")).toBe(mended(fixable));
    expect(statSync(join(folder, "parts.csv")).mtimeMs).toBe(before);
    expect((await cli.run(folder, "check", "--fix")).out).toContain("nothing found. 0 fixed.");
  });

  test("keeps byte-order mark, line ends and encoding", async () => {
    const crlf = `\uFEFF${fixable.replaceAll("\n", "\r\n")}`;
    for (const encode of [(text: string) => Buffer.from(text), utf16le]) {
      const folder = cli.folder({ ...clean, "guide.md": encode(crlf) });
      await cli.run(folder, "check", "--fix");
      expect(readFileSync(join(folder, "guide.md"))).toEqual(encode(mended(crlf)));
    }
  });

  test("writes down what the front matter was read as, but guesses nothing", async () => {
    const notes = "heights: { R1: 3 }\nclearence: { main: 20 mm }\n";
    const text = guide.replace("title: Blinker\n", `title: Blinker\n${notes}`);
    const folder = cli.folder({ ...clean, "guide.md": text });
    const { out } = await cli.run(folder, "check", "--fix");
    expect(out).toContain("1 fixed.");
    expect(out).toContain("Did you mean `clearance`?");
    expect(readFileSync(join(folder, "guide.md"), "utf8")).toBe(
      text.replace("R1: 3 ", "R1: 3 mm "),
    );
  });

  test("leaves files alone when there is nothing to fix", async () => {
    const folder = cli.folder(faulty);
    execFileSync("chmod", ["-w", join(folder, "guide.md")]);
    const { code, out } = await cli.run(folder, "check", "--fix");
    expect([code, out]).toEqual([1, expect.stringContaining("0 fixed.")]);
    expect(readFileSync(join(folder, "guide.md"), "utf8")).toBe(faulty["guide.md"]);
  });
});

function utf16le(text: string): Buffer {
  return Buffer.from(text, "utf16le");
}

describe("kitquill list", () => {
  test("steps gives number, stage, text, parts and height", async () => {
    const folder = cli.folder({
      ...clean,
      "guide.md": guide.replace("---\n\n", "heights: { C1: 5 mm }\n---\n\n"),
    });
    const { code, out } = await cli.run(folder, "list", "steps", "guide.md", "--format", "json");
    expect(code).toBe(0);
    const rows = JSON.parse(out);
    expect(rows[1]).toEqual({
      number: "1.2",
      stage: "Board",
      text: "Solder C1.",
      parts: ["C1"],
      tallest: 5,
      file: "guide.md",
      line: 13,
    });
    expect(rows[0]).toMatchObject({ text: "Solder the resistors R1, R2.", parts: ["R1", "R2"] });
    const csv = (await cli.run(folder, "list", "steps", "guide.md", "--format", "csv")).out.split(
      "\r\n",
    );
    expect(csv[0]).toBe("number,stage,text,parts,tallest,file,line");
    expect(csv[1]).toMatch(/^1\.1,Board,"Solder the resistors R1, R2\.","R1,R2",/);
  });

  test("steps shows marks as their items and figures as what they state", async () => {
    const steps = `1. Wind [make: L1] with {turns(L1) = 25} turns. [#coil]
2. Take {read V(TP1) = 12 V ± 5 %}, at {VCC = 13.8 V ± 10 %}.

   More of it.
3. See [see: coil], draw {2 * VCC * 1 A = 27.6 W}.
`;
    const folder = cli.folder({
      ...clean,
      "guide.md": guide.slice(0, guide.indexOf("1. ")) + steps,
    });
    const { out } = await cli.run(folder, "list", "steps", "guide.md", "--format", "json");
    expect(JSON.parse(out).map((row: { text: string }) => row.text)).toEqual([
      "Wind L1 with 25 turns.",
      "Take V(TP1) = 12 V ± 5 %, at 13.8 V ± 10 %.",
      "See coil, draw 27.6 W.",
    ]);
  });

  test("parts of a guide gives each part with its step", async () => {
    const folder = cli.folder(clean);
    const { out } = await cli.run(folder, "list", "parts", "guide.md", "--format", "json");
    expect(JSON.parse(out)).toEqual([
      expect.objectContaining({
        designator: "R1",
        value: "4k7",
        fitted: true,
        step: "1.1",
        line: 2,
      }),
      expect.objectContaining({ designator: "R2", step: "1.1", file: "parts.csv" }),
      expect.objectContaining({ designator: "C1", value: "100n", step: "1.2", line: 3 }),
    ]);
    const text = (await cli.run(folder, "list", "parts", "guide.md")).out.split("\n");
    expect(text[0]).toMatch(/^Part +Qty +Value +Package +Height mm +Height from +Fitted +Step$/);
    expect(text[1]).toMatch(/^R1 +1 +4k7 .* yes +1\.1$/);
  });

  test("parts of a bare list gives its lines", async () => {
    const folder = cli.folder({
      "list.csv":
        "Ref;Qty;Value;Footprint;DNP\nR1-R3;3;4k7;R_Axial_DIN0207_L6.3mm_D2.5mm;\nC1;1;100n;;DNP\n",
    });
    const { code, out } = await cli.run(folder, "list", "parts", "list.csv", "--format", "json");
    expect(code).toBe(0);
    const [first, second] = JSON.parse(out);
    expect(first).toEqual({
      designators: ["R1", "R2", "R3"],
      quantity: 3,
      metres: null,
      value: "4k7",
      package: "R_Axial_DIN0207_L6.3mm_D2.5mm",
      height: 2.5,
      heightFrom: expect.stringMatching(/./),
      fitted: true,
      line: 2,
    });
    expect(second).toMatchObject({ designators: ["C1"], fitted: false, line: 3 });
  });

  test("columns tells what each column was taken for", async () => {
    const folder = cli.folder(clean);
    const { out } = await cli.run(folder, "list", "columns", "parts.csv", "--format", "json");
    expect(
      JSON.parse(out).map((one: { column: number; header: string; meaning: string }) => [
        one.column,
        one.header,
        one.meaning,
      ]),
    ).toEqual([
      [1, "Designator", "designator"],
      [2, "Quantity", "quantity"],
      [3, "Value", "value"],
      [4, "Package", "package"],
    ]);
    for (const one of JSON.parse(out)) expect(one.why).not.toBe("");
  });

  test("ends with 2 for a file that is no list or no guide", async () => {
    const folder = cli.folder({
      ...clean,
      "x.csv": Uint8Array.of(0x25, 0x50, 0x44, 0x46, 0x2d, 0, 1, 2),
    });
    const pdf = await cli.run(folder, "list", "parts", "x.csv");
    expect([pdf.code, pdf.out]).toEqual([2, ""]);
    expect(pdf.err).toContain("PDF");
    expect((await cli.run(folder, "list", "steps", "parts.csv")).code).toBe(2);
  });
});

test("kitquill lsp --stdio answers an editor and ends with it", async () => {
  const message = (json: object) => {
    const body = JSON.stringify({ jsonrpc: "2.0", ...json });
    return `Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`;
  };
  const { status, stdout } = spawnSync(process.execPath, [cli.bundle, "lsp", "--stdio"], {
    input: [
      message({
        id: 1,
        method: "initialize",
        params: { processId: null, rootUri: null, capabilities: {} },
      }),
      message({ method: "initialized", params: {} }),
      message({ id: 2, method: "shutdown" }),
      message({ method: "exit" }),
    ].join(""),
    encoding: "utf8",
    timeout: 20_000,
  });
  expect(stdout).toContain('"id":1');
  expect(stdout).toContain("textDocumentSync");
  expect(status).toBe(0);
});

describe("kitquill list hazards", () => {
  const cautious = `---
parts: parts.csv
---

## Case

> **WARNING: moving parts.** Drills catch. Clamp the work.

1. Drill the lid.
2. Brush it with acetone.

> **CAUTION: fumes.** They hurt. Air the room.

<!-- allow hazard-missing: cut with scissors -->

3. Trim the leads.
`;

  test("tells what brings each hazard and which note covers it", async () => {
    const folder = cli.folder({ "guide.md": cautious, "parts.csv": parts });
    const { code, out } = await cli.run(folder, "list", "hazards", "guide.md", "--format", "json");
    expect(code).toBe(0);
    const rows: Record<string, unknown>[] = JSON.parse(out);
    expect(
      rows.map(({ step, hazard, state, line, noteLine }) => [step, hazard, state, line, noteLine]),
    ).toEqual([
      ["1.1", "moving parts", "covered", 9, 7],
      ["1.1", "eye injury", "missing", 9, null],
      ["1.2", "fire", "missing", 10, null],
      ["1.2", "fumes", "late", 10, 12],
      ["1.3", "eye injury", "allowed", 16, null],
    ]);
    expect(rows[0]).toMatchObject({
      evidence: 'drills ("Drill the lid")',
      note: "WARNING: moving parts",
      file: "guide.md",
      noteFile: "guide.md",
    });
  });
});

describe("kitquill start", () => {
  test("prints a guide that checks clean", async () => {
    const folder = cli.folder({ "kits/wren-parts.csv": parts });
    const { code, out, err } = await cli.run(folder, "start", "kits/wren-parts.csv");
    expect([code, err]).toEqual([0, ""]);
    expect(out).toContain('title: "Wren"\nlanguage: en\nparts: "kits/wren-parts.csv"\n');
    const saved = cli.folder({ "kits/wren-parts.csv": parts, "wren.md": out });
    expect((await cli.run(saved, "check", "wren.md")).out).toMatch(/ nothing found\.\n$/);
  });

  test("names the kit after the folder where the list's name tells nothing, and says so", async () => {
    const folder = cli.folder({ "wren/bom.csv": parts });
    const { out } = await cli.run(folder, "start", "wren/bom.csv", "--out", "wren/guide.md");
    expect(out).toContain("Its title, `Wren`, is a guess: change it at the top of the file");
    const given = ["--out", "wren/other.md", "--title", "Wren 2"];
    expect((await cli.run(folder, "start", "wren/bom.csv", ...given)).out).toBe(
      "`wren/other.md` is written. Word its steps; `kitquill check wren/other.md` tells what is still open.\n",
    );
  });

  test("writes a new file with paths from its folder, and never over an old one", async () => {
    const folder = cli.folder({ "main.csv": parts, "psu.csv": parts, "docs/old.md": "mine" });
    const lists = ["main=main.csv", "psu=psu.csv"];
    const { code, out } = await cli.run(folder, "start", ...lists, "--out", "docs/kit.md");
    expect(code).toBe(0);
    expect(out).toContain("`kitquill check docs/kit.md` tells what is still open");
    const text = readFileSync(join(folder, "docs/kit.md"), "utf8");
    expect(text).toContain('parts:\n  "main": "../main.csv"\n  "psu": "../psu.csv"\n');
    const again = await cli.run(folder, "start", ...lists, "--out", "docs/old.md");
    expect(again.code).toBe(2);
    expect(again.err).toContain("`docs/old.md` exists already and is left as it is.");
    expect(readFileSync(join(folder, "docs/old.md"), "utf8")).toBe("mine");
  });

  test.each([
    [[], "`start` needs the name of a parts list."],
    [["none.csv"], "There is no file `none.csv`."],
    [["parts.csv", "parts.csv"], "Several lists need the board of each"],
    [["parts.csv", "--language", "xx"], "`--language` does not take `xx`"],
    [
      ["parts.csv", "--out", "no/such/folder.md"],
      "`no/such/folder.md` cannot be written: its folder is not there.",
    ],
    [["guide.md"], "`guide.md` is a guide. Name its parts list: `parts.csv`."],
    [["."], "`.` is a folder. Name a file in it."],
  ])("%j is refused", async (args, message) => {
    const { code, err } = await cli.run(cli.folder(clean), "start", ...args);
    expect(code).toBe(2);
    expect(err).toContain(message);
  });
});

describe("kitquill list tools", () => {
  const tooled = {
    ...clean,
    "guide.md": guide
      .replace("parts: parts.csv\n", "parts: parts.csv\ntools: [side cutters]\n")
      .replace("[R1, R2].", "[R1, R2] and cut the leads with side cutters.")
      .replace("[C1].", "[C1] with tweezers. [own: resistor 1 kΩ, 2 W] [tool: hot iron, lamp]"),
  };

  test("shows what lists each tool and which steps need it", async () => {
    const { code, out } = await cli.run(cli.folder(tooled), "list", "tools", "guide.md");
    expect(code).toBe(0);
    expect(out.split("\n").map((line) => line.split(/ {2,}/).join("|"))).toEqual([
      "Kind|Name|Listed in|Steps",
      "tool|side cutters|tools|1.1",
      "tool|hot iron|mark|1.2",
      "tool|lamp|mark|1.2",
      "tool|tweezers|1.2",
      "own|resistor 1 kΩ, 2 W|mark|1.2",
      "",
    ]);
  });

  test("gives CSV and JSON", async () => {
    const folder = cli.folder(tooled);
    const csv = await cli.run(folder, "list", "tools", "guide.md", "--format", "csv");
    expect(csv.out.split("\r\n").slice(0, 2)).toEqual([
      "kind,name,listed,steps",
      "tool,side cutters,tools,1.1",
    ]);
    const json = await cli.run(folder, "list", "tools", "guide.md", "--format", "json");
    expect(JSON.parse(json.out)[3]).toEqual({
      kind: "tool",
      name: "tweezers",
      listed: null,
      steps: ["1.2"],
    });
  });

  test("takes guides only", async () => {
    const { code, err } = await cli.run(cli.folder(clean), "list", "tools", "parts.csv");
    expect(code).toBe(2);
    expect(err).toContain("parts.csv");
  });
});

describe("kitquill list figures", () => {
  const figured = {
    ...clean,
    "guide.md": guide
      .replace("parts: parts.csv\n", "parts: parts.csv\nsupply: { VCC: 12 V ± 5 % }\n")
      .replace(
        "[C1].",
        "[C1]. {P(R1) = VCC^2 / R1 = 31 mW} {read V(TP1) < 50 mV} {25 °C + 20 K} {5 kgf·cm} {oops}",
      ),
  };

  test("gives JSON in coherent SI units", async () => {
    const folder = cli.folder(figured);
    const { code, out } = await cli.run(folder, "list", "figures", "guide.md", "--format", "json");
    expect(code).toBe(0);
    const file = "guide.md";
    const [rail, power, reading, temperature, torque, none] = JSON.parse(out);
    expect(rail).toEqual({
      ...{ name: "VCC", line: 4, nominal: 12, min: 11.4, max: 12.6, unit: "V", stated: null },
      ...{ text: "VCC = 12 V ± 5 %", file },
    });
    expect(power).toMatchObject({
      name: "P(R1)",
      nominal: 0.0306382978723,
      unit: "W",
      stated: 0.031,
    });
    expect(power.text).toBe("P(R1) = VCC^2 / R1 = 31 mW");
    expect(reading).toMatchObject({ name: "V(TP1)", nominal: null, min: null, max: 0.05 });
    expect(temperature).toMatchObject({ name: null, nominal: 318.15, unit: "K" });
    expect(torque).toMatchObject({ nominal: 0.4903325, unit: "N·m", stated: null });
    expect(none).toMatchObject({ nominal: null, min: null, max: null, unit: null, text: "oops" });
  });

  test("shows values as a reader writes them", async () => {
    const { out } = await cli.run(cli.folder(figured), "list", "figures", "guide.md");
    expect(out.split("\n").map((line) => line.split(/ {2,}/).join("|"))).toEqual([
      "Name|Value|Worst case|Line|Figure",
      "VCC|12 V|11.4 V … 12.6 V|4|VCC = 12 V ± 5 %",
      expect.stringMatching(/^P\(R1\)\|30.6 mW\|27.6 mW … 33.8 mW\|\d+\|P\(R1\) = VCC\^2/),
      expect.stringMatching(/^V\(TP1\)\|< 50 mV\|/),
      expect.stringMatching(/^\|45 °C\|/),
      expect.stringMatching(/^\|0.49 N·m\|/),
      expect.stringMatching(/^\|no value\|/),
      "",
    ]);
  });

  test("gives CSV", async () => {
    const folder = cli.folder(figured);
    const { out } = await cli.run(folder, "list", "figures", "guide.md", "--format", "csv");
    expect(out.split("\r\n").slice(0, 2)).toEqual([
      "name,line,nominal,min,max,unit,stated,text,file",
      "VCC,4,12,11.4,12.6,V,,VCC = 12 V ± 5 %,guide.md",
    ]);
  });
});
