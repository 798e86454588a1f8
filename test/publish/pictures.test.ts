/** Pictures of a publication: odd names are found, and what readers will not see is told. */
import { expect, test } from "vitest";
import { InlinePictures, PicturesBeside } from "../../server/src/publish/pictures.ts";
import { loadPicture } from "../../server/src/workspace/publishedPictures.ts";

const FOLDER = "file:///kit/";
/** The smallest PNG: one grey dot. */
const PNG = Buffer.from(
  "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNgAAAAAgABSK+kcQAAAABJRU5ErkJggg==",
  "base64",
);
const JPEG = Buffer.from([0xff, 0xd8, 0xff, 0xe0, 0, 16, ...Buffer.from("JFIF")]);
const text = (words: string) => Buffer.from(words);

function load(url: string, files: Readonly<Record<string, Uint8Array>>) {
  const picture = async (uri: string) => {
    const value = files[decodeURIComponent(uri.slice(FOLDER.length))];
    return value ? ({ kind: "found", value } as const) : ({ kind: "missing" } as const);
  };
  return loadPicture({ pageUri: `${FOLDER}guide.md`, url }, [FOLDER], { picture });
}

/** As an address in the page, the file's name, and the name that it gets beside the page. */
test.each([
  ["with%20space.png", "with space.png", /^with-space-\w+\.png$/],
  ["with space.png", "with space.png", /^with-space-\w+\.png$/],
  ["Größe.PNG", "Größe.PNG", /^Gro-e-\w+\.png$/],
  ["a%23b.png", "a#b.png", /^a-b-\w+\.png$/],
  ["100%.png", "100%.png", /^100-\w+\.png$/],
  ["50%2525.png", "50%25.png", /^50-25-\w+\.png$/],
  ["what%3F.png?raw=1#x", "what?.png", /^what-\w+\.png$/],
  [`it's "it".png`, `it's "it".png`, /^it-s-it-\w+\.png$/],
  ["(1)&<b>.png", "(1)&<b>.png", /^1-b-\w+\.png$/],
  ["....png", "....png", /^picture-\w+\.png$/],
  ["图.png", "图.png", /^picture-\w+\.png$/],
  // A device on Windows, where no file may have that name, with or without an ending.
  ["CON.png", "CON.png", /^CON-\w+\.png$/],
  ["photo", "photo", /^photo-\w+\.png$/],
])("%s is found and gets a name that every system takes", async (url, file, name) => {
  const { picture, warning } = await load(url, { [file]: PNG });
  expect(warning).toBeUndefined();
  const beside = new PicturesBeside();
  beside.add(picture!);
  const [written] = beside.files.keys();
  expect(written!.replace("pictures/", "")).toMatch(name);
  expect(beside.source(`${FOLDER}guide.md`, url)).toBe(written);
});

test("two pictures of one name and other content, and two whose names fold to one, stay two", async () => {
  const beside = new PicturesBeside();
  for (const [url, bytes] of [
    ["a/x.png", PNG],
    ["b/x.png", Buffer.concat([PNG, PNG])],
    ["a b.png", JPEG],
    ["a-b.png", PNG],
  ] as const) {
    beside.add((await load(url, { [url]: bytes })).picture!);
  }
  const names = [...beside.files.keys()].map((name) => name.toLowerCase());
  expect(new Set(names).size).toBe(4);
});

test("the content tells the kind, whatever the name says", async () => {
  const { picture } = await load("photo.PNG", { "photo.PNG": JPEG });
  expect(picture!.type).toEqual({ media: "image/jpeg", ending: "jpg" });
  const inline = new InlinePictures();
  inline.add(picture!);
  const sign = inline.source(`${FOLDER}guide.md`, "photo.PNG")!;
  const { stretches } = inline.content(`<img src="${sign}">`) as { stretches: Iterable<unknown> };
  expect([...stretches]).toContain("data:image/jpeg;base64,");
});

test.each([
  ["prolog", '<?xml version="1.0"?>\n<!-- <b> -->\n<!DOCTYPE svg>\n<svg viewBox="0 0 1 1"/>'],
  ["prefix", '<s:svg xmlns:s="http://www.w3.org/2000/svg"/>'],
  ["mark", "\uFEFF<svg/>"],
])("an SVG with %s is one", async (_, words) => {
  expect((await load("a.svg", { "a.svg": text(words) })).picture!.type.ending).toBe("svg");
});

test.each<[string, Readonly<Record<string, Uint8Array>>, string]>([
  ["gone.png", {}, "there is no such file"],
  ["empty.png", { "empty.png": text("") }, "the file is empty"],
  ["words.png", { "words.png": text("hello") }, "holds no picture"],
  ["page.svg", { "page.svg": text("<html><p>svg</p></html>") }, "holds no picture"],
  ["scan.tif", { "scan.tif": text("II*\0") }, "holds no picture"],
  ["../other/a.png", {}, "leads out of the folder"],
  ["%2e%2e/a.png", {}, "leads out of the folder"],
  ["file:///etc/passwd", {}, "leads out of the folder"],
  ["//example.com/x.png", {}, "leads out of the folder"],
  ["https://example.com/x.png", {}, "loads nothing from the web"],
  ["", {}, "names no file"],
  ["#x", {}, "names no file"],
])("%j is not shown, and why is told", async (url, files, why) => {
  const { picture, warning } = await load(url, files);
  expect(picture).toBeUndefined();
  expect(warning).toContain(`Picture \`${url}\` of guide.md is not shown: `);
  expect(warning).toContain(why);
});

test("a PNG that was cut short is shown as far as it goes, and told", async () => {
  const { picture, warning } = await load("a.png", { "a.png": PNG.subarray(0, 50) });
  expect(picture!.type).toEqual({ media: "image/png", ending: "png" });
  expect(warning).toContain("stops before its end");
});

const drawing = (inside: string) => text(`<svg xmlns="http://www.w3.org/2000/svg">${inside}</svg>`);

test.each([
  "<script>alert(1)</script>",
  "<s:script/>",
  '<path d="M0 0" onload = "alert(1)"/>',
  '<a xlink:href="javascript:alert(1)"/>',
  '<image width="1" href="https://example.com/dot.png"/>',
  "<use href='//example.com/a.svg#x'/>",
])("a drawing with %s is published with a warning", async (inside) => {
  const { picture, warning } = await load("a.svg", { "a.svg": drawing(inside) });
  expect(picture!.type.ending).toBe("svg");
  expect(warning).toContain(
    "`a.svg` of guide.md holds a script, or fetches something from the web.",
  );
});

test.each([
  "<text>Turn it on, one = two. javascript: no</text>",
  '<a href="https://example.com/">x</a>',
  '<use href="#x"/><image href="data:image/png;base64,AA=="/>',
  "<".repeat(100_000),
  `<image ${" on".repeat(50_000)}`,
])("a drawing with %.40s is not warned of", async (inside) => {
  expect((await load("a.svg", { "a.svg": drawing(inside) })).warning).toBeUndefined();
});
