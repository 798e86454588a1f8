/** DEVELOPERS.md keeps its word: what it names is there. */
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { rowsOf } from "./page.ts";

const PAGE = readFileSync("DEVELOPERS.md", "utf8");
const FOLDERS = ["client", "samples", "scripts", "server", "syntaxes", "test"];
const { scripts, devDependencies } = JSON.parse(readFileSync("package.json", "utf8"));

const PATHS = [
  "CHANGELOG.md",
  "package.json",
  ...FOLDERS.flatMap((folder) =>
    readdirSync(folder, { recursive: true, withFileTypes: true })
      .map((entry) => `${entry.parentPath}/${entry.name}${entry.isDirectory() ? "/" : ""}`)
      .filter((path) => !path.includes("node_modules")),
  ),
];
const NAMES = new Set(
  PATHS.filter((path) => /^(?:server|client)\/.*\.ts$/.test(path)).flatMap(
    (path) => readFileSync(path, "utf8").match(/[A-Za-z_]\w*/g) ?? [],
  ),
);

const quoted = [...new Set([...PAGE.matchAll(/`([^`\n]+)`/g)].map((match) => match[1]!))];
/** With a slash or an ending; a name to be put in stands in angle brackets. */
const paths = quoted.filter((text) => /^[\w@<>./-]+(?:\/|\.(?:ts|mjs|md|json|js))$/.test(text));
/** As the sources write them: with a capital somewhere. */
const names = quoted.filter(
  (text) => /^[A-Za-z]\w*(?:\.\w+)?$/.test(text) && /[A-Z]/.test(text) && !paths.includes(text),
);

function isThere(path: string): boolean {
  // What is built or published is there only after that.
  if (path.startsWith("dist/") || path === "guide.json") return true;
  const ending = path.replace(/<[^>]+>/g, "");
  const folder = ending.slice(0, ending.lastIndexOf("/") + 1);
  const wanted = path.includes("<") ? folder : path;
  return PATHS.some((known) => known === wanted || known.endsWith(`/${wanted}`));
}

describe("what DEVELOPERS.md names is there", () => {
  test("each path", () => {
    expect(paths.length).toBeGreaterThan(30);
    expect(paths.filter((path) => !isThere(path))).toEqual([]);
  });

  test("each folder of the architecture", () => {
    const [, tree] = /## Architecture\n\n```\n([^`]+)```/.exec(PAGE)!;
    const lines = tree!.split("\n").map((line) => /^( *)([\w./]+)(?: {2}(\w+\/) )?/.exec(line));
    const named = lines.flatMap((match) => {
      if (!match) return [];
      const [, indent, first, second] = match;
      return [first!, second].flatMap((one) => (one ? [indent ? `server/src/${one}` : one] : []));
    });
    expect(named).toContain("server/src/cli/");
    expect(named.filter((path) => !isThere(path))).toEqual([]);
    const folders = readdirSync("server/src", { withFileTypes: true });
    const unnamed = folders.filter(
      (entry) => entry.isDirectory() && !named.includes(`server/src/${entry.name}/`),
    );
    expect(unnamed.map(({ name }) => name)).toEqual([]);
  });

  test("each name of the sources", () => {
    expect(names.length).toBeGreaterThan(25);
    const parts = names.flatMap((name) => name.split("."));
    expect(parts.filter((name) => !NAMES.has(name))).toEqual([]);
  });

  test("each script of npm", () => {
    const named = quoted.flatMap((text) => /^npm (?:run )?(\w+)/.exec(text)?.[1] ?? []);
    expect(named.length).toBeGreaterThan(8);
    const npm = ["version"];
    expect(named.filter((name) => !(name in scripts) && !npm.includes(name))).toEqual([]);
  });

  test("each dependency with its reason, and no other", () => {
    const rows = rowsOf(PAGE.slice(PAGE.indexOf("## Dependencies")));
    const told = rows.flatMap(({ package: packages }) => packages!.split(", "));
    const known = Object.keys(devDependencies).map((name) =>
      name.replace(/^@types\/.*/, "@types/*"),
    );
    expect([...told].sort()).toEqual([...new Set(known)].sort());
    expect(rows.filter((row) => !row.for)).toEqual([]);
  });
});
