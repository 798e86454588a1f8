import { describe, expect, test } from "vitest";
import { SIGN_CODES, signMeaning, signSvg } from "../../server/src/trade/signs/signs.ts";

/** What is not well-formed XML about a document of elements with quoted attributes and text. */
function faultOf(xml: string): string | undefined {
  const open: string[] = [];
  const tag = /<(\/?)([a-z]+)((?: [a-zA-Z-]+="[^"<&]*")*)(\/?)>|[^<>&]+|([\s\S])/gy;
  for (const [whole, closes, name, attributes, empty, odd] of xml.matchAll(tag)) {
    if (odd !== undefined) return `odd sign before ${whole}`;
    if (name === undefined) continue;
    const names = [...(attributes ?? "").matchAll(/ ([a-zA-Z-]+)=/g)].map((match) => match[1]);
    if (new Set(names).size < names.length) return `${name} has an attribute twice`;
    if (closes) {
      if (open.pop() !== name) return `${name} is closed but not open`;
    } else if (!empty) open.push(name);
  }
  return open.length > 0 ? `${open.join(", ")} left open` : undefined;
}

test.each([
  ["<g>", "g left open"],
  ["<g></p>", "p is closed but not open"],
  ['<g a="1" a="2"/>', "g has an attribute twice"],
  ["<g a=1/>", "odd sign before <"],
  ["a & b", "odd sign before &"],
  ["<g/", "odd sign before <"],
])("The test of form finds the fault of %s", (xml, fault) => {
  expect(faultOf(xml)).toBe(fault);
});

describe.each([...SIGN_CODES])("The sign %s", (code) => {
  const svg = signSvg(code);

  test("is well-formed, in one line of ASCII, and refers to nothing", () => {
    expect(faultOf(svg)).toBeUndefined();
    expect(svg).toMatch(/^<svg xmlns="http:\/\/www.w3.org\/2000\/svg" [\x20-\x7e]+<\/svg>$/);
    expect(svg).not.toMatch(/href|url\(|script|style/);
  });

  test("tells its code and its meaning to those who cannot see it", () => {
    expect(svg).toContain(`<title>${code}: ${signMeaning(code)}</title>`);
  });

  // ISO 7010 and ISO 3864-1: W is a triangle, yellow and black; M a disc, blue and white.
  test("has the shape and the colours of its kind", () => {
    const colours = new Set(svg.match(/#[0-9a-f]{6}/g));
    const expected = code.startsWith("W") ? ["#282828", "#f9a800"] : ["#005387", "#f4f4f4"];
    expect([...colours].sort()).toEqual(expected);
    expect(svg.includes('<circle cx="50" cy="50" r="49"')).toBe(code.startsWith("M"));
    expect(svg.includes("M50 9 94 87H6z")).toBe(code.startsWith("W"));
  });

  // The field of a sign, with room for the edge.
  test("keeps its picture inside the field", () => {
    const numbers = [...svg.matchAll(/(?:cx|cy|x|y)="(-?[\d.]+)"/g)].map((match) => +match[1]!);
    for (const one of numbers) expect(one).toBeGreaterThan(0);
    for (const one of numbers) expect(one).toBeLessThan(100);
  });
});

test("A sign takes a size where one is given", () => {
  expect(signSvg("W012")).not.toContain(" width=");
  expect(signSvg("W012", { size: 56 })).toContain(' width="56" height="56"');
});
