/** The law of the engine: findings after any edits equal those of a fresh check. */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Diagnosis, Service } from "../../server/src/service.ts";
import { MemoryFiles } from "../memoryFiles.ts";
import { type Edit, editsOf, hostileText } from "../syntax/hostile.ts";

const FOLDER = "file:///kit/";
const GUIDE = `${FOLDER}guide.md`;

const LIST = `Designator,Quantity,Value,Footprint,Board,Description
"R1–R4, R7",5,4k7,R_Axial_DIN0207_L6.3mm_D2.5mm,,
"R5,R6",2,10k,R_Axial_DIN0207_L6.3mm_D2.5mm,,
"C1,3,6",3,100n,C_Disc_D5.0mm_W2.5mm_P5.00mm,,
C10,1,100u,CP_Radial_D8.0mm_H11.5mm_P3.50mm,,
"Q1,Q2,Q5",4,BC547,TO-92,,
"D1,D2",2,1N4148,DO-35,,
K2,1,,Relay_SRD,,
U3,1,NE5532,DIP-8_W7.62mm,,
XU3,1,,DIP-8_W7.62mm_Socket,,
"J1,R9",2,,,,
,6,M3x10,,,Screw M3x10
`;

const HEAD = `---
title: T
parts: parts.csv
heights: { K2: 11 mm }
supply: { VEE: -12 V }
figures: { Iq: VCC / R1, half: VEE / 2 }
---

`;

/** What a user sees of the findings, whatever objects they are made of. */
function shown(diagnoses: readonly Diagnosis[]): unknown[] {
  return diagnoses.map(({ code, severity, message, span, related, uri }) => ({
    code,
    severity,
    message,
    span,
    uri,
    related: related.map((one) => [one.uri, one.span, one.message]),
  }));
}

async function service(files: Readonly<Record<string, string>>): Promise<Service> {
  const memory = new MemoryFiles();
  for (const [name, text] of Object.entries(files)) memory.set(FOLDER + name, text);
  return new Service(memory);
}

/** Findings of the text checked from scratch. */
async function fresh(files: Readonly<Record<string, string>>, text: string): Promise<unknown[]> {
  const one = await service(files);
  one.open(GUIDE, 1, text);
  await one.settle();
  one.takeChanges();
  return all(one, Object.keys(files));
}

function all(one: Service, names: readonly string[]): unknown[] {
  return [GUIDE, ...names.map((name) => FOLDER + name)].flatMap((uri) => shown(one.diagnoses(uri)));
}

async function expectLaw(
  files: Readonly<Record<string, string>>,
  start: string,
  edits: readonly Edit[],
): Promise<void> {
  const one = await service(files);
  let text = start;
  one.open(GUIDE, 0, text);
  await one.settle();
  one.takeChanges();
  for (const [index, { at, remove, insert }] of edits.entries()) {
    const from = Math.round(at * text.length);
    const to = Math.min(text.length, from + remove);
    text = text.slice(0, from) + insert + text.slice(to);
    one.edit(GUIDE, index + 1, [{ span: { start: from, end: to }, text: insert }]);
    // Some edits are taken in together, as when typing outruns the check.
    if (index % 3 === 1) continue;
    await one.settle();
    one.takeChanges();
  }
  await one.settle();
  one.takeChanges();
  expect(all(one, Object.keys(files))).toEqual(await fresh(files, text));
}

describe("findings after random edits equal those of a fresh check", () => {
  test("of hostile text, 2,000 times", async () => {
    const files = { "parts.csv": LIST };
    await fc.assert(
      fc.asyncProperty(hostileText, editsOf(5), (text, edits) =>
        expectLaw(files, HEAD + text, edits),
      ),
      { numRuns: 2000 },
    );
  }, 240_000);

  test("of an edit that moves offsets but no line", async () => {
    await expectLaw({ "parts.csv": LIST }, `${HEAD}1. [Q1]\n`, [
      { at: 0.1, remove: 0, insert: "R" },
    ]);
  });

  test("of an edit that changes what a set in another stage means", async () => {
    const body = "## A\n\n1. Fit [R1–R7].\n\n## B\n\n1. Fit [rest of R = 4k7].\n";
    const at = (HEAD.length + body.indexOf("–R7")) / (HEAD.length + body.length);
    const listed = LIST.replace("R1–R4, R7", "R1–R4").replace('"R5,R6"', '"R5–R7"');
    await expectLaw({ "parts.csv": listed }, HEAD + body, [{ at, remove: 3, insert: "" }]);
  });

  test("of stages of the same words that are written anew", async () => {
    const body = "## A\n\n1. Fit [Q1].\n\n## A\n\n1. Fit [Q1].\n\n## A\n\n1. Fit [Q1].\n";
    const text = HEAD + body;
    const start = text.indexOf("supply");
    const insert = text.slice(start).replace("-12 V", "-9 V");
    await expectLaw({ "parts.csv": LIST }, text, [
      { at: start / text.length, remove: text.length - start, insert },
    ]);
  });

  const samples = new URL("../../samples/", import.meta.url);
  for (const kit of ["heron", "constructs"]) {
    test(`of the sample ${kit}`, async () => {
      const folder = new URL(`${kit}/`, samples);
      expect(existsSync(folder)).toBe(true);
      const names = readdirSync(folder).filter((name) => /\.(?:md|csv)$/.test(name));
      const files = Object.fromEntries(
        names.map((name) => [name, readFileSync(new URL(name, folder), "utf8")]),
      );
      const main = names.find((name) => /^---[\s\S]*?^parts:/m.test(files[name]!))!;
      const { [main]: text, ...others } = files;
      await fc.assert(
        fc.asyncProperty(editsOf(4), (edits) => expectLaw(others, text!, edits)),
        { numRuns: 15 },
      );
    }, 240_000);
  }
});
