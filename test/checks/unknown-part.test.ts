import { describe, expect, test } from "vitest";
import { applyFix, checkFixture } from "../fixture.ts";
import { drawn, kit, messages } from "./kit.ts";

const CODE = "unknown-part";
const LIST = "Designator,Quantity,Value\nR1–R4,4,10k\nC1,1,100n\n,4,M3x10";

/** The guide's step after each fix that is offered for it. */
async function fixed(step: string, list = LIST): Promise<string[]> {
  const { files, diagnoses } = await checkFixture(kit(`## Board\n\n1. ${step}`, list), CODE);
  const fixes = diagnoses.flatMap((diagnosis) => diagnosis.fixes());
  return fixes.map((fix) => {
    expect(fix.safe).toBe(false);
    return applyFix(files, fix).get("guide.md")!.split("1. ")[1]!.trim();
  });
}

describe("A designator that the list does not have", () => {
  test("is replaced by a near one, the rest of the mark as it was", async () => {
    expect(await fixed("Solder [R2,  R11 , C1].")).toContain("Solder [R2,  R1 , C1].");
  });

  test("written with a carried prefix is replaced by the whole name", async () => {
    expect(await fixed("Solder [R1, 2, 5].")).toContain("Solder [R1, 2, R3].");
  });

  test("is not replaced by another class while later items carry its letters on", async () => {
    const list = "Designator,Quantity,Value\nD1,1,x\nD2,1,x\nC4,1,x\nC6,1,x";
    expect(await fixed("Solder [B1, 2].", list)).not.toContain("Solder [D1, 2].");
  });

  test.each(["later", "place", "insert", "make", "match", "try", "remove"])(
    "is an error in a mark with the role %s",
    async (role) => {
      const found = await messages(kit(`## Board\n\n1. Do [${role}: R9].`, LIST), CODE);
      expect(found).toHaveLength(1);
      expect(found[0]).toMatch(/^error: The parts list has no R9\./);
    },
  );

  test("is information where its place stays empty", async () => {
    const found = await messages(kit("## Board\n\n1. Leave [empty: R9] free.", LIST), CODE);
    expect(found).toEqual([expect.stringMatching(/^information: The parts list has no R9\./)]);
  });

  test("is no finding in bridge, tool and own marks, nor as a bare word", async () => {
    const body =
      "## Board\n\n1. Close [bridge: JP9], take [own: R9 from the drawer], [tool: B2], press [RESET].";
    expect(await messages(kit(body, LIST), CODE)).toEqual([]);
  });

  test("is found in the exceptions of a set", async () => {
    const fixture = kit(
      "## Board\n\n1. Solder [all R except R9].\n                        ^^ unknown-part",
      LIST,
    );
    const { found, expected } = await drawn(fixture, CODE);
    expect(found).toEqual(expected);
  });

  test("is looked for on its board only", async () => {
    const list = "Designator,Value,Board\nR1,1k,main\nR2,1k,main\nR1,1k,relay";
    const found = await messages(kit("## Board\n\n1. Solder [relay/R2].", list), CODE);
    expect(found).toEqual([expect.stringMatching(/^error: The parts list has no relay\/R2\./)]);
  });

  test("gets a warning where several boards have it", async () => {
    const list = "Designator,Value,Board\nR1,1k,main\nR1,1k,relay";
    const found = await messages(kit("## Board\n\n1. Solder [R1].", list), CODE);
    expect(found).toEqual([
      expect.stringMatching(/^warning: R1 is on the boards main and relay; main is taken\./),
    ]);
    expect(await fixed("Solder [R1].", list)).toEqual(["Solder [main/R1].", "Solder [relay/R1]."]);
  });
});

describe("A key that no line fits", () => {
  test("may have a decimal comma, which is a decimal point and no end of it", async () => {
    const list = 'Designator,Quantity,Value\n,2,Spacer 3.5 mm\n,2,"Washer 3,2 mm"';
    const found = (text: string) => messages(kit(`## Board\n\n1. ${text}`, list), CODE);
    expect(await found("Put on [2 × Spacer 3,5 mm] and [2 × Washer 3.2 mm].")).toEqual([]);
    expect(await fixed("Put on [2 × Wahser 3,2 mm].", list)).toEqual([
      "Put on [2 × Washer 3,2 mm].",
    ]);
  });

  test("is replaced by the nearest", async () => {
    expect(await fixed("Screw [2 × M3x1O].")).toEqual(["Screw [2 × M3x10]."]);
  });

  test("but that parts with designators fit, names them", async () => {
    const found = await messages(kit("## Board\n\n1. Solder [4 × 10k].", LIST), CODE);
    expect(found).toEqual([expect.stringContaining("marked by them: R1–R4.")]);
  });

  test("alone, since several do, is made clear by a text that one line alone has, or by its item number", async () => {
    const list =
      "Item,Designator,Quantity,Description\n1,,2,M3x10 pan head\n2,,2,M3x10 countersunk";
    expect(await fixed("Screw [2 × M3x10].", list)).toEqual([
      "Screw [2 × M3x10 pan head].",
      "Screw [2 × M3x10 countersunk].",
    ]);
  });
});

test("Nothing is unknown while the list cannot be read", async () => {
  expect(await messages(kit("## Board\n\n1. Solder [R9].", "\0\0\0"), CODE)).toEqual([]);
  expect(await messages("---\nparts: none.csv\n---\n\n1. Solder [R9].\n", CODE)).toEqual([]);
});
