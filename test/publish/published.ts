/** Publishes guides for tests. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { type CheerioAPI, load } from "cheerio";
import type { GuideState } from "../../server/src/model/guideState.ts";
import { stretchesOf } from "../../server/src/publish/content.ts";
import type { OutputName } from "../../server/src/publish/outputs/all.ts";
import type { PublishedFile } from "../../server/src/publish/outputs/output.ts";
import type { PackBy } from "../../server/src/publish/packing/packingList.ts";
import { Service } from "../../server/src/service.ts";
import { publishGuide } from "../../server/src/workspace/publishing.ts";
import { Sources } from "../../server/src/workspace/sources.ts";
import { fixture } from "../fixture.ts";
import { MemoryFiles } from "../memoryFiles.ts";

const FOLDER = "file:///kit/";

export interface Published {
  readonly guide: GuideState;
  readonly files: readonly PublishedFile[];
  readonly faults: readonly string[];
  text(name: string): string;
  /** The page as a browser would read it. */
  page(): CheerioAPI;
}

export interface PublishHow {
  readonly errors?: number;
  readonly picturesBeside?: boolean;
  readonly packBy?: PackBy;
  readonly rate?: number;
}

/** Publishes `guide.md` of a fixture, or another of its files. */
export function publishFixture(text: string, outputs: readonly OutputName[]): Promise<Published> {
  return publishFiles(fixture(text).files, "guide.md", outputs);
}

/** Publishes a guide of the samples. */
export function publishSample(
  folder: string,
  guide: string,
  outputs: readonly OutputName[],
  how: PublishHow = {},
): Promise<Published> {
  const path = join(import.meta.dirname, "../../samples", folder);
  const entries = readdirSync(path, { withFileTypes: true });
  const names = entries.filter((entry) => entry.isFile()).map(({ name }) => name);
  const files = new Map(names.map((name) => [name, readFileSync(join(path, name), "utf8")]));
  return publishFiles(files, guide, outputs, how);
}

export async function publishFiles(
  texts: ReadonlyMap<string, string>,
  name: string,
  outputs: readonly OutputName[],
  how: PublishHow = {},
): Promise<Published> {
  const memory = new MemoryFiles();
  for (const [name, text] of texts) memory.set(FOLDER + name, text);
  const service = new Service(memory);
  service.follow(FOLDER + name);
  await service.settle();
  const guide = service.guidesOf(FOLDER + name)[0]!;
  const request = {
    outputs,
    picturesBeside: how.picturesBeside ?? false,
    wordsPerMinute: how.rate,
    packBy: how.packBy,
    errors: how.errors ?? 0,
    folders: [FOLDER],
  };
  const { files, faults } = await publishGuide(guide, request, new Sources(memory));
  const text = (wanted: string) => {
    const file = files.find((one) => one.name === wanted);
    if (!file) throw new Error(`There is no file ${wanted}.`);
    return Buffer.concat(
      [...stretchesOf(file.content())].map((one) => Buffer.from(one)),
    ).toString();
  };
  return { guide, files, faults, text, page: () => load(text("guide.html")) };
}

/** What a reader sees of a stretch of HTML: text with white space folded. */
export function seen(text: string): string {
  return text.replace(/\s+/g, " ").trim();
}
