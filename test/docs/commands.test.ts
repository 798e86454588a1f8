/**
 * The README and the pages keep their word: a fenced block with a file's name is written to a folder,
 * and each `$ kitquill …` of a console block is run there, with the output that stands below it.
 */
import { cpSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { parse } from "yaml";
import { Cli } from "../cli/cli.ts";
import { type Block, fencedBlocks } from "./page.ts";

const ROOT = join(import.meta.dirname, "../..");
const DOCS = join(ROOT, "server/docs");
const PAGES = [
  "README.md",
  ...readdirSync(DOCS)
    .filter((name) => name.endsWith(".md"))
    .map((name) => `server/docs/${name}`),
];
/** The kit that pages may speak of. */
const SAMPLE = "samples/plover";
const SCRIPTS = Object.keys(JSON.parse(read("package.json")).scripts);
/** Blocks that a test of their own tries, or that only show something. */
const ELSEWHERE = new Map([
  ["markdown", "dialect.md, recipes.md"],
  ["csv", "dialect.md, recipes.md"],
  ["lua", "other-editors.md"],
  ["text", "command.md"],
]);

let cli: Cli;
beforeAll(async () => {
  cli = await Cli.build();
});
afterAll(() => cli.remove());

function read(path: string): string {
  return readFileSync(join(ROOT, path), "utf8");
}

describe.each(PAGES)("%s", (path) => {
  const page = read(path);
  const blocks = fencedBlocks(page);

  test("leads to files that are there", () => {
    const targets = [...page.matchAll(/\]\(([^)#\s]+)(?:#[^)]*)?\)/g)].map((one) => one[1]!);
    const local = targets.filter((target) => !/^(?:https?|command):/.test(target));
    const written = fencedBlocks(page).flatMap(({ name }) => name ?? []);
    const gone = local.filter((target) => {
      const at = resolve(ROOT, dirname(path), target);
      return !isThere(at) && !written.includes(target) && !isExample(page, target);
    });
    expect(gone).toEqual([]);
  });

  test("shows nothing that is not tried", () => {
    const loose = blocks.filter(
      ({ language, name }) =>
        !["console", "sh", "yaml"].includes(language) &&
        name === undefined &&
        !ELSEWHERE.get(language)?.includes(path.split("/").at(-1)!),
    );
    expect(loose.map(({ language, text }) => `${language}: ${text}`)).toEqual([]);
  });

  test("gives commands whose output is as shown", async () => {
    const folder = cli.folder({});
    if (page.includes(`kitquill list figures ${SAMPLE}`))
      cpSync(join(ROOT, SAMPLE), join(folder, SAMPLE), { recursive: true });
    const shown: string[] = [];
    const real: string[] = [];
    for (const { language, name, text } of blocks) {
      if (name !== undefined) writeFileSync(join(folder, name), text);
      if (language !== "console") continue;
      for (const { command, output } of runsOf(text)) {
        const [program, ...args] = words(command);
        expect(program).toBe("kitquill");
        const { out, err } = await cli.run(folder, ...args);
        shown.push(`$ ${command}\n${output}`);
        real.push(`$ ${command}\n${asShown(out + err, output)}`);
      }
    }
    expect(real).toEqual(shown);
  });

  test("names scripts that the project has", () => {
    const lines = blocks.filter(({ language }) => language === "sh").flatMap(linesOf);
    const scripts = lines.map((line) => /^npm (?:run )?([a-z]+)/.exec(line)?.[1] ?? line);
    expect(scripts.filter((name) => !SCRIPTS.includes(name))).toEqual([]);
  });

  test("has workflows whose commands run", async () => {
    for (const { text } of blocks.filter(({ language }) => language === "yaml")) {
      for (const command of commandsIn(parse(text))) {
        const [program, ...args] = words(command.replace(/ > \S+$/, ""));
        if (program === "npm") continue;
        expect(program).toBe("kitquill");
        const folder = cli.folder(filesOf(blocks));
        expect((await cli.run(folder, ...args)).code).not.toBe(2);
      }
    }
  });
});

function isThere(path: string): boolean {
  try {
    readFileSync(path);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === "EISDIR";
  }
}

/** A link that only stands in an example of the dialect. */
function isExample(page: string, target: string): boolean {
  return [...page.matchAll(/`[^`\n]+`/g)].some(([code]) => code.includes(`](${target})`));
}

const linesOf = ({ text }: Block) => text.trim().split("\n");

function filesOf(blocks: readonly Block[]): Record<string, string> {
  return Object.fromEntries(blocks.flatMap(({ name, text }) => (name ? [[name, text]] : [])));
}

/** What the steps of a workflow run. */
function commandsIn(workflow: { jobs: Record<string, { steps: { run?: string }[] }> }): string[] {
  return Object.values(workflow.jobs).flatMap(({ steps }) => steps.flatMap(({ run }) => run ?? []));
}

interface Run {
  readonly command: string;
  readonly output: string;
}

/** The commands of a console block, each with what stands below it. */
function runsOf(text: string): Run[] {
  return text
    .split(/^\$ /m)
    .slice(1)
    .map((part) => {
      const end = part.indexOf("\n");
      return { command: part.slice(0, end), output: part.slice(end + 1).trimEnd() };
    });
}

/** The words of a command as a shell parts them, quotes taken off. */
function words(command: string): string[] {
  return [...command.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, plain]) => quoted ?? plain!);
}

/**
 * Real output with left out what the page leaves out: a line `…` stands for any lines, `…` at a line's
 * end for its rest. Where it does not fit, it comes back whole.
 */
function asShown(real: string, shown: string): string {
  const whole = real.trimEnd();
  const pattern = shown
    .split("\n")
    .map((line) => {
      if (line === "…") return "[\\s\\S]*?";
      const cut = line.endsWith("…");
      return escaped(cut ? line.slice(0, -1) : line) + (cut ? ".*" : "");
    })
    .join("\n");
  return new RegExp(`^${pattern}$`).test(whole) ? shown : whole;
}

function escaped(text: string): string {
  return text.replaceAll(/[\\^$.*+?()[\]{}|]/g, "\\$&");
}
