/** Files of a publication take the place of others all together, whichever operation fails. */
import { expect, test } from "vitest";
import {
  type Replacement,
  type Replacing,
  refuseUnsafe,
  replaceAll,
} from "../../server/src/publish/replacing.ts";

const BEFORE = { "guide.html": "old page", "tools.csv": "old tools" };
const DRAFTS = { d0: "new page", d1: "new list", d2: "new tools" };
const REPLACEMENTS: readonly Replacement<string>[] = [
  { draft: "d0", target: "guide.html", aside: "a0" },
  { draft: "d1", target: "packing-list.csv", aside: "a1" },
  { draft: "d2", target: "tools.csv", aside: "a2" },
];

/** A file system that fails once, at the operation of that number. */
class Failing implements Replacing<string> {
  readonly files = new Map<string, string>(Object.entries({ ...BEFORE, ...DRAFTS }));
  #countdown: number;

  constructor(failsAt: number) {
    this.#countdown = failsAt;
  }

  async keep(file: string, aside: string): Promise<boolean> {
    this.#count();
    const content = this.files.get(file);
    if (content !== undefined) this.files.set(aside, content);
    return content !== undefined;
  }

  async replace(from: string, to: string): Promise<void> {
    this.#count();
    this.files.set(to, this.files.get(from)!);
    this.files.delete(from);
  }

  async remove(file: string): Promise<void> {
    this.#count();
    this.files.delete(file);
  }

  /** What lies there under the names of the publication. */
  published(): Readonly<Record<string, string>> {
    return Object.fromEntries([...this.files].filter(([name]) => name.includes(".")));
  }

  #count(): void {
    if (--this.#countdown === 0) throw new Error("the disk is full");
  }
}

test("all are replaced where nothing fails", async () => {
  const disk = new Failing(0);
  await replaceAll(REPLACEMENTS, disk);
  expect(disk.published()).toEqual({
    "guide.html": "new page",
    "packing-list.csv": "new list",
    "tools.csv": "new tools",
  });
});

// Each file is kept and then replaced.
test.each([1, 2, 3, 4, 5, 6])("operation %i fails: all is as it was", async (failsAt) => {
  const disk = new Failing(failsAt);
  await expect(replaceAll(REPLACEMENTS, disk)).rejects.toThrow("the disk is full");
  expect(disk.published()).toEqual(BEFORE);
});

test.each(["guide.html", "pictures/board-2.jpg", "a"])(
  "%s is a name for a file of ours",
  (name) => {
    expect(refuseUnsafe([{ name }])).toBeUndefined();
  },
);

test.each([
  "../guide.html",
  "/guide.html",
  "a/../b",
  "a..b",
  ".hidden",
  "a/b/c",
  "c:x",
  "a\\b",
  "",
])("%j is none", (name) => {
  expect(() => refuseUnsafe([{ name: "guide.html" }, { name }])).toThrow("no name of ours");
});
