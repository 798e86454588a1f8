/** The drawings of the sample kits: of parts that the kit has, the same in each language, safe to show. */
import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { load } from "cheerio";
import { describe, expect, test } from "vitest";
import { DEFAULT_SETTINGS, Service } from "../../server/src/service.ts";
import { MemoryFiles } from "../memoryFiles.ts";

const SAMPLES = fileURLToPath(new URL("../../samples", import.meta.url));
const FOLDER = "file:///kit/";

const drawings = (kit: string) =>
  readdirSync(`${SAMPLES}/${kit}`).filter((name) => name.endsWith(".svg"));
const read = (kit: string, name: string) => readFileSync(`${SAMPLES}/${kit}/${name}`, "utf8");

/** What a drawing says, without its title. */
function texts(svg: string): string {
  const $ = load(svg, { xml: true });
  return $("text")
    .toArray()
    .map((one) => $(one).text())
    .join(" ");
}

/** `Q101`, `LED1`; neither a thread `M3` nor `2.1 MHz`. */
function designators(svg: string): string[] {
  const found = texts(svg).match(/\b(?!M3\b)[A-Z]{1,3}\d{1,3}\b/g) ?? [];
  return [...new Set(found)].sort();
}

async function partsOf(kit: string): Promise<Set<string>> {
  const memory = new MemoryFiles();
  for (const name of readdirSync(`${SAMPLES}/${kit}`)) {
    if (/\.(?:md|csv)$/.test(name)) memory.set(FOLDER + name, read(kit, name));
  }
  const service = new Service(memory, DEFAULT_SETTINGS);
  service.follow(`${FOLDER}${kit}.md`);
  await service.settle();
  const { parts } = service.guidesOf(`${FOLDER}${kit}.md`)[0]!;
  return new Set(parts.flatMap(({ name, line }) => [name, line.cells.value?.text ?? ""]));
}

describe.each(["heron", "plover"])("the drawings of %s", (kit) => {
  test("name only what the kit has", async () => {
    const known = await partsOf(kit);
    const unknown = drawings(kit).flatMap((name) =>
      designators(read(kit, name)).filter((one) => !known.has(one)),
    );
    expect(drawings(kit).length).toBeGreaterThan(3);
    expect(unknown).toEqual([]);
  });

  test("are each shown in the guide, with words for who cannot see them", () => {
    const pages = readdirSync(`${SAMPLES}/${kit}`).filter((name) => name.endsWith(".md"));
    const text = pages.map((name) => read(kit, name)).join("\n");
    const shown = [...text.matchAll(/!\[([^\]]{20,})\]\(([^)]+)\)/g)].map(([, , file]) => file);
    expect(shown.sort()).toEqual(drawings(kit).sort());
  });

  test("fetch nothing, run nothing and scale to the page", () => {
    for (const name of drawings(kit)) {
      const svg = read(kit, name);
      expect(svg).toMatch(/^<svg [^>]*viewBox="0 0 /);
      expect(svg).not.toMatch(/<script|<image|<use|href|\son\w+=|url\(/i);
    }
  });

  test("stand in the twin with planted faults, too", () => {
    const german = /\.de\.svg$/;
    for (const name of drawings(kit).filter((one) => !german.test(one))) {
      expect(read(`${kit}-faults`, name)).toBe(read(kit, name));
    }
  });
});

test("a drawing names the same parts in English and in German", () => {
  const german = drawings("plover").filter((name) => name.endsWith(".de.svg"));
  expect(german.length).toBeGreaterThan(2);
  for (const name of german) {
    const english = read("plover", name.replace(".de.svg", ".svg"));
    expect(designators(read("plover", name))).toEqual(designators(english));
  }
});

// Common practice: a turn is a pass through the hole, so as many strokes over the ring as turns.
test("the drawing of a winding has as many turns as it says", () => {
  const svg = read("heron", "winding.svg");
  const $ = load(svg, { xml: true });
  const strokes = $("path")
    .toArray()
    .map((one) => ($(one).attr("d")!.match(/L/g) ?? []).length);
  // Seven; 25 and the two ends of the wire; four, drawn twice for the white edge.
  expect(strokes).toEqual([2, 7, 27, 4, 4]);
  expect(texts(svg)).toContain("7 turns");
  expect(texts(svg)).toContain("25 turns, 4 over the ground end");
  const guide = read("heron", "heron.md");
  expect(guide).toContain("{turns(L1) = 25} turns");
  expect(guide).toContain("then 4 turns of the short one over the end that goes to ground");
});
