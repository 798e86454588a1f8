import { describe, expect, test } from "vitest";
import { choice, readArguments, wholeNumber } from "../../server/src/cli/arguments.ts";
import { run } from "../../server/src/cli/run.ts";

const options = { format: "string", "max-warnings": "string", fix: "boolean" } as const;
const read = (line: string) => readArguments(line.split(" ").filter(Boolean), options);

describe("arguments", () => {
  test("may stand in any order, with = or without", () => {
    const args = read("a.md --format=json --fix b.md --max-warnings 3");
    expect(args.positionals).toEqual(["a.md", "b.md"]);
    expect([args.value("format"), args.has("fix"), args.value("max-warnings")]).toEqual([
      "json",
      true,
      "3",
    ]);
    expect(read("--format text --format json").value("format")).toBe("json");
  });

  test("after -- are files", () => {
    expect(read("-- --fix").positionals).toEqual(["--fix"]);
  });

  test.each([
    ["--fromat json", "`--fromat` is not an option of this command. Did you mean `--format`?"],
    ["--max-warning=3", "Did you mean `--max-warnings`?"],
    ["--zzz", "`--help` lists the options."],
    ["--constructor", "`--constructor` is not an option"],
    ["-x", "`-x` is not an option"],
    ["--fix=yes", "`--fix` takes no value."],
    ["--format", "`--format` needs a value after it."],
    ["--format --fix", "`--format` needs a value after it."],
  ])("that cannot be used are explained: %s", (line, message) => {
    expect(() => read(line)).toThrow(message);
  });

  test("are held to choices and whole numbers", () => {
    const choices = ["text", "json", "sarif"] as const;
    expect(choice(read(""), "format", [...choices])).toBe("text");
    expect(() => choice(read("--format jsno"), "format", [...choices])).toThrow(
      "Did you mean `json`?",
    );
    expect(() => choice(read("--format yaml"), "format", [...choices])).toThrow(
      "It takes text, json, sarif.",
    );
    expect(wholeNumber(read("--max-warnings 0"), "max-warnings")).toBe(0);
    for (const wrong of ["-1", "1.5", "many", "1e9"]) {
      expect(() => wholeNumber(read(`--max-warnings=${wrong}`), "max-warnings")).toThrow(
        "whole number",
      );
    }
  });
});

describe("commands", () => {
  async function outcome(line: string) {
    const said = { out: "", err: "" };
    const code = await run(
      line.split(" ").filter(Boolean),
      {
        out: (text) => {
          said.out += text;
        },
        err: (text) => {
          said.err += text;
        },
        paint: (_, text) => text,
        columns: undefined,
        progress: () => {},
      },
      process.cwd(),
    );
    return { code, ...said };
  }

  test.each([
    ["--help", "Usage:"],
    ["-h", "Usage:"],
    ["help", "Usage:"],
    ["help check", "--max-warnings"],
    ["check --help", "--max-warnings"],
    ["list --help", "kitquill list columns LIST"],
    ["lsp -h", "--stdio"],
    ["--version", "."],
  ])("%s tells about itself and ends with 0", async (line, text) => {
    const { code, out, err } = await outcome(line);
    expect([code, err]).toEqual([0, ""]);
    expect(out).toContain(text);
  });

  test.each([
    ["", "Usage:"],
    ["chekc", "`chekc` is not a command. Did you mean `check`?"],
    [
      "frobnicate",
      "Commands: check, compare, list, match, publish, narration, start, adopt, explain, lsp.",
    ],
    ["--verison", "`--verison` is not an option. Did you mean `--version`?"],
    ["help chekc", "Did you mean `check`?"],
    ["toString", "`toString` is not a command"],
    ["help toString", "`toString` is not a command"],
    ["list", "`list` needs to know what to list."],
    ["list stpes x.md", "Did you mean `steps`?"],
    ["list steps", "needs the name of a file"],
    ["list steps a.md b.md", "`b.md` is too many"],
    ["list columns nowhere.csv", "There is no file `nowhere.csv`."],
    ["lsp", "Write `kitquill lsp --stdio`."],
    ["lsp --stdio x", "takes no file"],
    ["check --format xml", "`--format` does not take `xml`."],
  ])("%j is refused with 2 and a reason", async (line, text) => {
    const { code, out, err } = await outcome(line);
    expect([code, out]).toEqual([2, ""]);
    expect(err).toContain(text);
  });
});
