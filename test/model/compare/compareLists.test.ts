/** What counts as a change between two parts lists, and how it is told. */
import { readFileSync } from "node:fs";
import Ajv2020 from "ajv/dist/2020.js";
import { describe, expect, test } from "vitest";
import { formatChanges } from "../../../server/src/cli/formats/changes.ts";
import { compareLists } from "../../../server/src/model/compare/compareLists.ts";
import { readPartsList } from "../../../server/src/model/list/read.ts";

function text(
  before: string,
  after: string,
  format: "text" | "markdown" | "json" = "text",
): string {
  const lists = [before, after].map((one) => readPartsList("file:///kit/parts.csv", one));
  const changes = compareLists(lists[0]!, lists[1]!);
  return formatChanges(changes, { before: "old.csv", after: "new.csv" }, format);
}

const HEADER = "Ref,Qty,Value,Package\n";

describe("no change", () => {
  test("is order, grouping, column names, delimiter and spelling of values", () => {
    const old = `${HEADER}"R1–R3",3,4k7,R_0207\nC1,1,100nF,RM5\nR4,1,4k7,R_0207\n`;
    const fresh =
      "Wert;Bauform;Bezeichner\n0,1 µF;rm5;C1\n4700;lib:R_0207;R2\n4.7K;R_0207;R1, R4\n4,7 kΩ;R_0207;R3\n";
    expect(text(old, fresh)).toContain("No part changed.");
  });

  test("is a chip that shares its designator with its socket", () => {
    const rows = ["U1,1,LM358,DIP-8", "U1,1,socket 8 pins,DIP-8"];
    expect(text(HEADER + rows.join("\n"), HEADER + [...rows].reverse().join("\n"))).toContain(
      "No part changed.",
    );
  });
});

describe("changes", () => {
  test("are told by designator, those of one kind together", () => {
    const old = `${HEADER}"R1, R2",2,4k7,0207\nC1,1,100n,RM5\nD1,1,1N4148,DO-35\n`;
    const fresh = `${HEADER}"R1, R2",2,5k6,0207\nC1,1,100n DNP,RM2.5\nQ1,1,BC547,TO-92\n`;
    expect(text(old, fresh)).toBe(`old.csv → new.csv

Removed
  D1: 1N4148, DO-35

Added
  Q1: BC547, TO-92

Changed
  R1, R2: value 4k7 → 5k6
  C1: value 100n → 100n DNP; package RM5 → RM2.5; fitted yes → no
`);
  });

  test("of ratings and tolerance are told apart from the value", () => {
    const shown = text(`${HEADER}R1,1,4k7 5% 0.25W,x\n`, `${HEADER}R1,1,4k7 1% 0.5W,x\n`);
    expect(shown).toContain("R1: tolerance 5 % → 1 %; power 0.25 W → 0.5 W");
  });

  test("of a few per cent in the value are seen, rounding is not", () => {
    expect(text(`${HEADER}R1,1,4.99k,x\n`, `${HEADER}R1,1,4.97k,x\n`)).toContain("4.99k → 4.97k");
    expect(text(`${HEADER}C1,1,0.1u,x\n`, `${HEADER}C1,1,100n,x\n`)).toContain("No part changed");
  });

  test("of the designator alone are a guess, in the order of numbers", () => {
    const old = `${HEADER}"R5, R7",2,10k,0207\n`;
    expect(text(old, `${HEADER}"R101, R102",2,10k,0207\n`)).toContain(
      "Perhaps renumbered (a guess: the same kind of part)\n  R5 → R101 (10k, 0207)\n  R7 → R102 (10k, 0207)",
    );
  });

  test("that leave open which part went are no renumbering", () => {
    const shown = text(`${HEADER}"R5, R7",2,10k,0207\n`, `${HEADER}R101,1,10k,0207\n`);
    expect(shown).not.toContain("renumbered");
    expect(shown).toContain("R5, R7: 10k");
  });

  test("of the board are told when both lists name boards", () => {
    const header = "Board,Ref,Value\n";
    const old = `${header}main,R1,10k\nkeys,R1,1k\nmain,S1,button\n`;
    const fresh = `${header}main,R1,10k\nkeys,R1,1k\nkeys,S1,button\n`;
    expect(text(old, fresh)).toContain("keys/S1: board main → keys");
  });

  test("of hardware are told by what it is, its lines added up", () => {
    const old = `${HEADER},4,screw M3x10,\n,2,screw M3x10,\n,1,knob,\nR1,1,1k,x\n`;
    const fresh = `${HEADER},8,Screw M3x10,\nR1,1,1k,x\n,1,lid,\n`;
    const shown = text(old, fresh);
    expect(shown).toContain("Screw M3x10: 6 → 8");
    expect(shown).toContain("knob: gone, was 1");
    expect(shown).toContain("lid: new, 1");
  });

  test("are not claimed of what only one list tells", () => {
    const shown = text(`${HEADER}R1,1,1k,0207\n`, "Ref,Value\nR1,1k\n");
    expect(shown).toContain("No part changed.");
    expect(shown).toContain("Only one of the lists tells of package");
  });
});

test("a change note in Markdown keeps what the list says from being markup", () => {
  const shown = text(`${HEADER}R1,1,1k,x\n`, `${HEADER}R1,1,*2k*,[x](y)\n`, "markdown");
  expect(shown).toContain("# Changes of the parts list");
  expect(shown).toContain("- R1: value 1k → \\*2k\\*; package x → \\[x\\](y)");
});

test("a change note tells the look of parts, and footprints by name where that is all that differs", () => {
  const old = `${HEADER}R1,1,1k,R_Axial_DIN0207_L6.3mm_D2.5mm_Horizontal\nC1,1,1u,C_0805_2012Metric\nR2,1,10R,panel\n`;
  const fresh = `${HEADER}R1,1,1k,R_Axial_DIN0309_L9.0mm_D3.2mm_Horizontal\nC1,1,1u,C_0805_2012Metric_Pad1.2x1.4mm_HandSolder\nD1,1,1N4148,D_DO-35_SOD27_P7.62mm_Horizontal\n`;
  const shown = text(old, fresh, "markdown");
  expect(shown).toContain(
    "- R1: package axial, lying, 6.3 mm long, 2.5 mm thick → axial, lying, 9 mm long, 3.2 mm thick\n",
  );
  expect(shown).toContain("- C1: package C\\_0805\\_2012Metric → C\\_0805");
  expect(shown).toContain("- D1: 1N4148, diode, DO-35, lying, leads 7.62 mm apart\n");
  expect(shown).toContain("- R2: 10R, resistor, panel\n");
  expect(text(old, fresh)).toContain("D1: 1N4148, D_DO-35_SOD27_P7.62mm_Horizontal\n");
});

test("JSON has the same in fields", () => {
  const old = `${HEADER}R1,1,1k,x\nR2,1,10k,x\n`;
  const json = JSON.parse(text(old, `${HEADER}R1,1,2k,x\nR3,1,10k,x\n`, "json"));
  expect(json.changed).toEqual([
    { designator: "R1", changes: [{ quality: "value", before: "1k", after: "2k" }] },
  ]);
  expect(json.renumbered).toEqual([{ from: { designator: "R2" }, to: { designator: "R3" } }]);
  expect(json.added).toEqual([]);
});

test("JSON of every kind of change is as its schema says, which allows no other fields", () => {
  const header = "Board,Ref,Qty,Value,Package,Height,Side\n";
  const old = `${header}main,R1,1,4k7 5% 0.25W,x,3 mm,top\nmain,R2,1,10k,x,,\nmain,C1,1,1u 63V,x,,\n,,4,screw M3x10,,,\n`;
  const fresh = `Board,Ref,Qty,Value,Package\nkeys,R1,1,5k6 1% 0.5W DNP,y\nmain,R3,1,10k,x\nmain,D1,1,1N4148 optional,x\n,,1,knob,\n`;
  const json = JSON.parse(text(old, fresh, "json"));
  const schema = JSON.parse(readFileSync("server/docs/compare.schema.json", "utf8"));
  const validate = new Ajv2020({ strict: true, allowUnionTypes: true }).compile(schema);
  validate(json);
  expect(validate.errors).toBeNull();
  const { added, removed, changed, renumbered, hardware, uncompared } = json;
  const filled = [added, removed, changed, renumbered, hardware, uncompared];
  expect(filled.filter((one) => one.length === 0)).toEqual([]);
  expect(validate({ ...json, other: 1 })).toBe(false);
});
