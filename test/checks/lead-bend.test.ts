import { describe, expect, test } from "vitest";
import { kit, messages } from "./kit.ts";

const CODE = "lead-bend";
const LIST = `Designator,Value,Package
D1,1N4148,DO-35
D2,1N5401,D_DO-201AD_P15.24mm_Horizontal
R1,1k,R_Axial_DIN0207_L6.3mm_D2.5mm_P10.16mm_Horizontal
U1,LM358,DIP-8`;

function found(figure: string): Promise<string[]> {
  return messages(kit(`## A\n\n1. Bend {${figure}}.`, LIST), CODE);
}

describe("A bend", () => {
  // Soldering course after NASA and IPC: radius 1, 1.5 and 2 diameters; distance one diameter and
  // 0.8 mm. A diode maker's notes for glass: 3.2 mm or three diameters.
  test.each([
    "bend(D1) = 3.2 mm",
    "bend(D2) = 1.3 mm",
    "bend(R1) = 0.8 mm",
    "radius(R1) = 0.6 mm",
    "radius(D2) = 2.6 mm",
    "bend(U1) = 0.1 mm",
    "bend(R1) = 5 V",
  ])("is in order: %s", async (figure) => {
    expect(await found(figure)).toEqual([]);
  });

  test.each([
    [
      "bend(D1) = 2 mm",
      "A bend 2 mm from the body is too close for D1, whose leads are 0.5 mm thick: the glass cracks. Leave 3.2 mm at least.",
    ],
    [
      "bend(R1) = 0.5 mm",
      "A bend 0.5 mm from the body is too close for R1, whose leads are 0.6 mm thick: the pull loosens the lead in the body. Leave 0.8 mm at least.",
    ],
    [
      "radius(D2) = 1.5 mm",
      "A bend of 1.5 mm radius is too tight for D2, whose leads are 1.3 mm thick: the metal cracks. Bend it round 2.6 mm at least.",
    ],
  ])("is not in order: %s", async (figure, message) => {
    expect(await found(figure)).toEqual([`warning: ${message}`]);
  });

  test("counts at the lower end of its tolerance", async () => {
    expect(await found("bend(D1) = 3.5 mm ± 0.5 mm")).toHaveLength(1);
  });
});
