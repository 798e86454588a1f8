import { readFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { Cli } from "./cli.ts";

let cli: Cli;
beforeAll(async () => {
  cli = await Cli.build();
});
afterAll(() => cli.remove());

const parts = 'Designator,Quantity,Value\n"R1, R2",2,4k7\nC1,1,100n\n';
const guide = "---\nparts: parts.csv\n---\n\n## Board\n\n1. Solder [R1, R2].\n2. Solder [C1].\n";
const clean = { "guide.md": guide, "parts.csv": parts };

describe("kitquill adopt", () => {
  const plain = "# Blinker\r\n\r\n## Board\r\n\r\n- R1, R2: 4k7\r\n1. Look at C1.\r\n";

  test("shows what it would mark and what is left, and writes nothing", async () => {
    const folder = cli.folder({ "guide.md": plain, "parts.csv": parts });
    const { code, out } = await cli.run(folder, "adopt", "guide.md", "--parts", "parts.csv");
    expect(code).toBe(0);
    expect(out).toContain("guide.md:5  [R1, R2]  (begins the step)\n");
    expect(out).toContain("Left to you:\n  C1  named at guide.md:6\n");
    expect(out).toContain("2 of 3 parts would be marked, 1 is left to you. Nothing is written yet");
    expect(readFileSync(join(folder, "guide.md"), "utf8")).toBe(plain);
  });

  test("counts a part that is placed as left, and tells of parts at one place together", async () => {
    const text = "## Board\n\n1. Insert R1 and R2, but do not solder them yet.\n\nMind C1.\n";
    const folder = cli.folder({ "guide.md": text, "parts.csv": parts });
    const { out } = await cli.run(folder, "adopt", "guide.md", "--parts", "parts.csv");
    expect(out).toContain("  R1 and R2  placed at guide.md:3; a later step must solder them\n");
    expect(out).toContain("  C1  named at guide.md:5\n");
    expect(out).toContain("\n0 of 3 parts would be marked, 3 are left to you.");
  });

  test("says so when nothing is left to mark", async () => {
    const { out } = await cli.run(cli.folder(clean), "adopt", "guide.md");
    expect(out).toBe("Every part of the list is marked already.\n");
  });

  test("writes the marks and the list's name, and every other character as it was", async () => {
    const folder = cli.folder({ "docs/guide.md": `\uFEFF${plain}`, "parts.csv": parts });
    const { out } = await cli.run(folder, "adopt", "docs/guide.md", "--parts=parts.csv", "--write");
    expect(out).toContain("docs/guide.md:9  [R1, R2]");
    const head = '---\r\nparts: "../parts.csv"\r\n---\r\n\r\n';
    expect(readFileSync(join(folder, "docs/guide.md"), "utf8")).toBe(
      `\uFEFF${head}${plain.replace("R1, R2", "[R1, R2]")}`,
    );
  });

  test.each([
    [[], "needs the name of a Markdown file"],
    [["none.md", "--parts", "parts.csv"], "There is no file `none.md`."],
    [["plain.md"], "Give it with `--parts LIST`."],
    [["plain.md", "--parts", "none.csv"], "There is no file `none.csv`."],
    [
      ["plain.md", "--parts", "./part.csv"],
      "There is no file `./part.csv`. Did you mean `parts.csv`?",
    ],
    [["parts.csv"], "`parts.csv` is no Markdown file. Name the guide, and its parts list"],
    [["guide.md", "--parts", "parts.csv"], "names its parts list already"],
  ])("%j is refused", async (args, message) => {
    const folder = cli.folder({ ...clean, "plain.md": plain });
    const { code, err } = await cli.run(folder, "adopt", ...args);
    expect(code).toBe(2);
    expect(err).toContain(message);
  });
});
