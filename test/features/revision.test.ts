/** What a revised parts list touches in a guide. The kits are inventions. */
import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { TOUCHED_KINDS } from "../../server/src/features/revision/touched.ts";
import { Service } from "../../server/src/service.ts";
import { MemoryFiles } from "../memoryFiles.ts";
import { xlsx } from "../syntax/sheets/packing.ts";
import { FOLDER, revise, type Texts, told } from "./revision.ts";

const HERON: Texts = Object.fromEntries(
  ["heron.md", ...readdirSync("samples/heron").filter((name) => name !== "heron.md")].map(
    (name) => [name, readFileSync(`samples/heron/${name}`, "utf8")],
  ),
);
const HERON_LIST = HERON["heron-parts.csv"]!;

/** What is touched when the list of the sample has other texts. */
async function heronWith(...replacements: readonly (readonly [string, string])[]) {
  let list = HERON_LIST;
  for (const [from, to] of replacements) {
    expect(list).toContain(from);
    list = list.replace(from, to);
  }
  return revise(HERON, "heron-parts.csv", list);
}

describe("of the sample kit", () => {
  test("another resistor: its row, its bands, and the fixes", async () => {
    const { touched, packing } = await heronWith(["10,R17,1,4k7", "10,R17,1,5k6"]);
    // Bands of 4.7 kΩ and 5.6 kΩ, 1 %, after IEC 60062.
    expect(touched.map(told)).toEqual([
      "table 3.11: R17: value 4k7 → 5k6; bands yellow violet black brown, brown → green blue black brown, brown. [Write 5k6, as in the list; Write green blue black brown brown, as in the list; Write 5k6, as in the list]",
    ]);
    expect(packing.map(({ before, after }) => [before, after])).toEqual([
      [undefined, "1"],
      ["1", undefined],
    ]);
  });

  test("a taller capacitor of a lower voltage: order, room and rating too", async () => {
    const { touched } = await heronWith([
      "470u,20 %,25 V,CP_Radial_D10.0mm_H16.0mm_P5.00mm",
      "470u,20 %,16 V,CP_Radial_D10.0mm_H25.0mm_P5.00mm",
    ]);
    expect(touched.map(({ kind, step }) => `${kind} ${step?.number}`)).toEqual([
      "step 8.12",
      "step 10.5",
      "table undefined",
      "order 9.12",
      "order 9.12",
      "clearance 8.12",
      "rating 8.12",
    ]);
    expect(touched[0]!.message).toBe(
      "C101: voltage 25 V → 16 V; package CP_Radial_D10.0mm_H16.0mm_P5.00mm → CP_Radial_D10.0mm_H25.0mm_P5.00mm; body height 16 mm → 25 mm.",
    );
  });

  test("a part gone, one more in a set, one that no step fits", async () => {
    const { touched } = await heronWith(
      [/9,R16,.*\n/.exec(HERON_LIST)![0], ""],
      ['"C2-C5, C22-C24, C55-C57",10', '"C2-C5, C22-C24, C55-C57, C61",11'],
      ["34,D1,1", '34,"D1, D6",2'],
    );
    expect(touched.map(told)).toEqual([
      "step: D6 (1N5819, D_DO-41_SOD81_P10.16mm_Horizontal) is new in the list, and no step fits it.",
      "table 3.9: R16 (1k5, R_Axial_DIN0207_L6.3mm_D2.5mm_P10.16mm_Horizontal) is no longer in the list.",
      'set 4.1: "all 100n" takes in C61 now: 11 parts, before 10.',
    ]);
  });

  test("fewer to pick from, less hardware, a place that stays empty", async () => {
    const { touched } = await heronWith(
      ['"Q102, Q103",4', '"Q102, Q103",2'],
      ["101,,26,M3x6", "101,,22,M3x6"],
      [
        "Potentiometer_Trimmer_6mm_Horizontal,main,",
        "Potentiometer_Trimmer_6mm_Horizontal,main,DNP",
      ],
    );
    const kinds = touched.map(({ kind, step, message }) => `${kind} ${step?.number} ${message}`);
    expect(kinds).toEqual([
      "step undefined Names RV3, which changed (do-not-fit now): see whether the text still holds.",
      "step 4.10 RV3: do-not-fit now.",
      expect.stringContaining("step 11.2 Names RV3"),
      expect.stringContaining("step 11.14 Names RV3"),
      expect.stringContaining("step 11.15 Names RV3"),
      expect.stringContaining("table undefined Names RV3"),
      "set 1.9 Q102 and Q103 are picked from 2 pieces now, before from 4.",
      expect.stringMatching(/^set .*M3x6/),
    ]);
  });

  test("designators renumbered, each place named once and no neighbour offered", async () => {
    const { touched } = await heronWith(['"J2, J3"', '"J2, J9"'], ["36,D4,", "36,D7,"]);
    expect(touched.map(told)).toEqual([
      "step 3.3: D4 seems to be D7 now, which is a guess: the same kind of part.",
      "step 4.17: J3 seems to be J9 now, which is a guess: the same kind of part.",
      "step 5.4: J3 seems to be J9 now, which is a guess: the same kind of part.",
      "step 11.11: J3 seems to be J9 now, which is a guess: the same kind of part.",
    ]);
  });

  test("figures of one step: each has its own fix, and what is loaded too much is not also asked", async () => {
    const { touched } = await heronWith(
      ['"R25, R26",2,2k2', '"R25, R26",2,680R'],
      ["C1,1,100u,20 %,25 V", "C1,1,100u,20 %,10 V"],
    );
    const own = touched.filter(({ kind }) => kind === "figure" || kind === "rating").map(told);
    expect(own).toEqual([
      "figure 5.9: I(LED1, LED2): 5.36 mA (4.68 mA … 6.06 mA) → 17.4 mA (15.1 mA … 19.6 mA). [Write 17.4 mA]",
      "figure 5.9: P(R25): 63.3 mW (48.8 mW … 79.8 mW) → 0.205 W (0.158 W … 0.259 W). [Write 205 mW]",
      expect.stringMatching(/^rating 5.2: V\(C1\) may come to 15.2 V/),
      expect.stringMatching(/^rating 5.9: P\(R25\) may come to 0.258 W/),
    ]);
  });

  test("a step that is hot for another reason has not stopped being hot", async () => {
    const { touched } = await heronWith(
      ['"R25, R26",2,2k2', '"R25, R26",2,680R'],
      ["U5,1,78L08", "U5,1,78L09"],
    );
    const hazards = touched.filter(({ kind }) => kind === "hazard").map(told);
    expect(hazards).toEqual([
      expect.stringMatching(
        /^hazard 6\.4: Brings the hazard hot surface for another reason now\. .*R25/,
      ),
    ]);
  });

  test("hardware that is gone: what is there in its place, and no guess at its name", async () => {
    const { touched } = await heronWith([
      'CuL 0.5,,,,,,,"enamelled copper wire, 0.5 mm"',
      'CuL 0.6,,,,,,,"enamelled copper wire, 0.6 mm"',
    ]);
    const GONE =
      "CuL 0.5 is no longer in the list. In the same amount there is CuL 0.6 enamelled copper wire, 0.6 mm now.";
    expect(touched.map(told)).toEqual([
      `step 2.8: ${GONE}`,
      `step 2.9: ${GONE}`,
      `step 2.10: ${GONE}`,
      `step 2.12.1: ${GONE}`,
    ]);
    expect(touched.every(({ findings }) => findings.length === 1)).toBe(true);
  });

  test("a builder is told of kind and look, and of nothing that only the author sees to", async () => {
    const { touched, packing } = await heronWith(
      [/9,R16,.*\n/.exec(HERON_LIST)![0], ""],
      ["34,D1,1", '34,"D1, D6",2'],
    );
    expect(touched.flatMap(({ note }) => note ?? [])).toEqual([
      "R16 (1k5, resistor, axial, lying, 6.3 mm long, 2.5 mm thick, leads 10.16 mm apart) is no longer in the kit.",
    ]);
    expect(packing.map(({ look, before, after }) => [look, before, after])).toEqual([
      ["1N5819, 40 V, diode, DO-41, lying, leads 10.16 mm apart", "1", "2"],
      [expect.stringMatching(/^1k5, 1 %, resistor, axial/), "1", undefined],
    ]);
  });

  test("nothing, when the list is only written otherwise", async () => {
    const fresh = HERON_LIST.replace("10,R17,1,4k7", "10,R17,1,4700").replace("R1, R2", "R2,R1");
    expect((await revise(HERON, "heron-parts.csv", fresh)).touched.map(told)).toEqual([]);
  });
});

const GUIDE = `---
parts: parts.csv
supply: { VCC: 325 V ± 10 % }
figures: { Iq: 10 mA }
---

# Kit

> **CAUTION: hot surface.** Joints burn skin. Let them cool.

> **CAUTION: fumes.** Flux irritates. Air the room.

## Board

1. Solder [R1 = 4k7]. It bears {P(R1) = Iq^2 * R1 = 0.47 W}.
2. Solder [C1] the right way round. It bears {V(C1) = VCC}.

## First power

1. Switch the supply on.
2. Read {read V(TP1) = Iq * R1 ± 5 %}. If it is off, look for a bad joint.
`;
const LIST = `Designator,Value,Power,Voltage,Package
R1,4k7,1 W,,R_0207
C1,1u,,400 V,CP_Radial_D10.0mm_H16.0mm
`;

const small = (fresh: string) =>
  revise({ "guide.md": GUIDE, "parts.csv": LIST }, "parts.csv", fresh);

describe("of a small kit", () => {
  test("figures: old and new result, the fix of the stated one, what is loaded above its rating", async () => {
    const { touched } = await small(LIST.replace("4k7,1 W", "10k,1 W"));
    const figures = touched.filter(({ kind }) => kind === "figure" || kind === "rating").map(told);
    expect(figures).toEqual([
      "figure 1.1: P(R1): 0.47 W → 1 W. [Write 1.00 W]",
      "figure 2.2: read V(TP1): 47 V (44.65 V … 49.35 V) → 100 V (95 V … 105 V).",
      expect.stringMatching(/^rating 1.1: P\(R1\) may come to 1 W, 100 % of what R1 stands/),
    ]);
  });

  // Computed: 100 µF at 357.5 V hold 6.4 J, 1 µF 0.06 J.
  test("hazards: gained with more capacitance, lost with less", async () => {
    const hazardsOf = async (old: string, fresh: string) => {
      const kit = { "guide.md": GUIDE, "parts.csv": old };
      const { touched } = await revise(kit, "parts.csv", fresh);
      return touched.filter(({ kind }) => kind === "hazard").map(told);
    };
    const more = LIST.replace("C1,1u", "C1,100u");
    expect(await hazardsOf(LIST, more)).toEqual([
      expect.stringMatching(/^hazard 2\.1: Brings a hazard now: stored charge\..*No note/),
    ]);
    expect(await hazardsOf(more, LIST)).toEqual([
      expect.stringMatching(/^hazard 2\.1: No longer brings a hazard: stored charge /),
    ]);
  });
});

describe("of a step's parts", () => {
  const HEAD = "Designator,Quantity,Value,Package,DNP,Optional\n";

  /** What is told of a body of steps when rows replace others. */
  async function touchedBy(body: string, rows: string, fresh: string, head = HEAD) {
    const guide = `---\nparts: parts.csv\nchecks: { polarity-missing: off }\n---\n\n## A\n\n${body}\n`;
    const kit = { "guide.md": guide, "parts.csv": head + rows };
    const revised = await revise(kit, "parts.csv", head + fresh);
    const told = revised.touched.filter(({ kind }) => kind === "step" || kind === "set");
    return { revised, messages: told.map(({ message }) => message) };
  }

  test("that they have a right way round now, or none any more", async () => {
    const [plain, polar] = ["C1,1,100n,C_Disc,,\n", "C1,1,100u,CP_Radial,,\n"];
    expect((await touchedBy("1. Fit [C1].", plain, polar)).messages[0]).toBe(
      "C1: value 100n → 100u; package C_Disc → CP_Radial; marked 104 → (none); has a right way round now (electrolytic capacitor).",
    );
    expect((await touchedBy("1. Fit [C1].", polar, plain)).messages[0]).toContain(
      "goes in either way round now (was electrolytic capacitor).",
    );
  });

  test("that they are optional, or to be fitted", async () => {
    const { messages } = await touchedBy(
      "1. Fit [R1], [R2], [R3].",
      "R1,1,1k,,,yes\nR2,1,2k,,,\nR3,1,3k,,x,\n",
      "R1,1,1k,,,\nR2,1,2k,,,yes\nR3,1,3k,,,\n",
    );
    expect(messages).toEqual([
      "R1: no longer optional.",
      "R2: optional now.",
      "R3: to be fitted now.",
    ]);
  });

  test("what a set gains and loses, and from how many each is picked", async () => {
    const { messages } = await touchedBy(
      "1. Fit [all R].\n2. Sort [match: Q1, Q2].",
      'R1,1,1k,,,\nR2,1,2k,,,\n"Q1, Q2",4,BC547,,,\n',
      'R1,1,1k,,,\nR3,1,3k,,,\n"Q1, Q2",3,BC547,,,\n',
    );
    expect(messages).toContain(
      '"all R" takes in R3 now and no longer holds R2: 2 parts, before 2.',
    );
    expect(messages).toContain("Q1 is picked from 3 pieces now, before from 4.");
  });

  test("with their board only where another has a part of that name", async () => {
    const { revised, messages } = await touchedBy(
      "<!-- board main -->\n\n1. Fit [R1, R2].",
      "main,R1,1k\nrelay,R1,1k\nmain,R2,1k\n",
      "main,R1,2k\nrelay,R1,3k\nmain,R2,2k\n",
      "Board,Designator,Value\n",
    );
    expect(messages).toEqual([
      "R2 and main/R1: value 1k → 2k; bands brown black red → red black red.",
    ]);
    const names = revised.changes.changed.map(({ part }) => revised.nameOf(part));
    expect(names).toEqual(["main/R1", "relay/R1", "R2"]);
  });
});

describe("of a list in a workbook", () => {
  const book = (...rows: readonly (readonly string[])[]) => {
    const cell = (text: string) => `<c t="inlineStr"><is><t>${text}</t></is></c>`;
    return xlsx(rows.map((row) => `<row>${row.map(cell).join("")}</row>`).join(""));
  };
  const HEAD = ["Ref", "Qty", "Value"];
  const old = book(HEAD, ["R1", "1", "1k"]);
  const GUIDE = "---\nparts: kit.xlsx#Kit\n---\n\n## A\n\n1. Fit [R1].\n";

  async function revisedBy(fresh: Uint8Array, list = `${FOLDER}kit.xlsx#Kit`) {
    const files = new MemoryFiles({ [`${FOLDER}kit.xlsx`]: old, [`${FOLDER}guide.md`]: GUIDE });
    const service = new Service(files);
    service.follow(`${FOLDER}guide.md`);
    await service.settle();
    const [guide] = service.guides();
    const content = (content: Uint8Array) => ({ content, sheet: "Kit" });
    return service.revise(guide!, list, content(old), content(fresh));
  }

  test("places in it are told by their cells, behind those in the guide", async () => {
    const revised = await revisedBy(book(HEAD, ["R1", "1", "3k"], ["C1", "1", "1u"]));
    if ("problem" in revised) throw new Error(revised.problem);
    expect(revised.touched.map(told)).toEqual([
      "step 1.1: R1: value 1k → 3k; bands brown black red → orange black red.",
      "step: Sheet `Kit`, cell A3: C1 (1u) is new in the list, and no step fits it.",
    ]);
    const { uri, span } = revised.touched[1]!;
    expect([uri, GUIDE.slice(span.start, span.end)]).toEqual([`${FOLDER}guide.md`, "parts"]);
  });

  test("one that cannot be read, or that the guide does not name, is a problem", async () => {
    const cut = await revisedBy(old.subarray(0, 50));
    expect(cut).toEqual({ problem: expect.stringContaining("damaged or cut off") });
    const other = await revisedBy(old, `${FOLDER}other.csv`);
    expect(other).toEqual({ problem: "The guide does not name that parts list." });
  });
});

describe("in general", () => {
  const rows = HERON_LIST.split("\n").filter((row) => row !== "");

  test("a list against itself in any order touches nothing", async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.shuffledSubarray(rows.slice(1), { minLength: rows.length - 1 }),
        async (shuffled) => {
          const fresh = [rows[0], ...shuffled].join("\n");
          const { touched, packing } = await revise(HERON, "heron-parts.csv", fresh);
          expect({ touched: touched.map(told), packing }).toEqual({ touched: [], packing: [] });
        },
      ),
      { numRuns: 3 },
    );
  });

  test("whatever row goes, each thing is told once, inside its file, in the order of kinds", async () => {
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: 1, max: rows.length - 1 }), async (gone) => {
        const fresh = rows.filter((_, index) => index !== gone).join("\n");
        const { touched } = await revise(HERON, "heron-parts.csv", fresh);
        const places = touched.map((one) => `${one.uri} ${one.span.start} ${told(one)}`);
        expect(new Set(places).size).toBe(places.length);
        expect(touched.length).toBeGreaterThan(0);
        const kinds = touched.map(({ kind }) => Object.keys(TOUCHED_KINDS).indexOf(kind));
        expect(kinds).toEqual([...kinds].sort((a, b) => a - b));
        const texts: Texts = { ...HERON, "heron-parts.csv": fresh };
        for (const { uri, span } of touched) {
          expect(span.start).toBeLessThan(span.end);
          expect(span.end).toBeLessThanOrEqual(texts[uri.slice(FOLDER.length)]!.length);
        }
      }),
      { numRuns: 8 },
    );
  });
});
