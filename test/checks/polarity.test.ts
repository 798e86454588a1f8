/** Orientation of polarised parts, and parts that look alike: verdicts of short fragments. */
import { describe, expect, test } from "vitest";
import { Service } from "../../server/src/service.ts";
import { LANGUAGES } from "../../server/src/text/language.ts";
import { applyEdits } from "../../server/src/text/span.ts";
import { lookOf, ringsDifferByOne } from "../../server/src/trade/lookAlike/looks.ts";
import { polarKind } from "../../server/src/trade/polarity/polarParts.ts";
import { checkFiles, checkFixture, fixture } from "../fixture.ts";
import { MemoryFiles } from "../memoryFiles.ts";
import { kit, messages } from "./kit.ts";

const LIST = `Designator,Quantity,Value,Package,Height
"D1, D2",2,1N4148,DO-35,1.9
C1,1,100u,CP_Radial_D6.3mm,11
LED1,1,red,LED_D3.0mm,8
U1,1,NE555,DIP-8_W7.62mm,4
XU1,1,DIP-8 socket,DIP-8_W7.62mm_Socket,4
R1,1,10k,Axial,2.5
`;

/** Names of the parts that nothing is said of, by finding. */
async function untold(body: string, more = ""): Promise<string[]> {
  const found = await messages(kit(body, LIST, more), "polarity-note");
  return found.map((one) => /fits (.*?) \(/.exec(one)![1]!);
}

const step = (text: string) => `## A\n\n1. ${text}`;

describe("Polarised parts are", () => {
  test.each([
    ["C", { value: "100u", description: "electrolytic" }, "electrolytic capacitor"],
    ["C", { value: "10u", description: "tantalum" }, "electrolytic capacitor"],
    ["D", { value: "1N4148" }, "diode"],
    ["LED", { value: "red" }, "LED"],
    ["U", { value: "78L05", package: "TO-92" }, "integrated circuit"],
    ["BT", { value: "9 V" }, "battery"],
    ["K", { value: "12 V", description: "latching relay" }, "relay"],
  ])("%s %j", (letters, hints, kind) => {
    expect(polarKind(letters, hints)).toBe(kind);
  });

  // Tempting, and either way round is right.
  test.each([
    ["C", { value: "100n", description: "ceramic" }],
    ["C", { value: "10u", description: "electrolytic, bipolar" }],
    ["D", { value: "DB3", description: "diac" }],
    ["D", { value: "P6KE15CA", description: "suppressor diode, bidirectional" }],
    ["K", { value: "12 V", description: "relay" }],
    ["R", { value: "10k" }],
    ["XU", { value: "DIP-8 socket" }],
    ["Q", { value: "BC547" }],
  ])("not %s %j", (letters, hints) => {
    expect(polarKind(letters, hints)).toBeUndefined();
  });
});

describe("The orientation is told by", () => {
  test.each([
    ["en", "Fit the diodes, rings to the marks on the board. [D1] Its ring is left."],
    ["en", "Fit it, cathode to the right. [D1]"],
    ["en", "The longer lead goes into the square pad. [LED1]"],
    ["en", "Fit it with + at the marked hole. [C1]"],
    ["en", "Turn its notch to the print. [U1]"],
    ["de", "Auf richtige Polung achten. [C1]"],
    ["de", "Die Kathode zeigt zum Rand. [D1]"],
    ["fr", "Respectez le sens de la diode. [D1]"],
    ["nl", "Let op de polariteit. [C1]"],
    ["es", "El cátodo a la izquierda. [D1]"],
    ["en", "Fit it as shown. [D1]\n\n   ![The cathode is on the left](d.svg)"],
    ["en", "Fit them.\n   1. [D1]\n   2. Both rings point up, cathode to the mark. [D2]"],
  ])("its step in %s: %s", async (language, text) => {
    expect(await untold(step(text), `language: ${language}\n`)).toEqual([]);
  });

  test.each([
    ["en", "Fit the diode. [D1]"],
    ["en", "Fit it. [LED1]\n\n   ![A board](d.svg)"],
    ["en", "Bend its leads to 10 mm and solder it. [D1]"],
    ["de", "Die Diode einlöten. [D1]"],
  ])("nothing in %s: %s", async (language, text) => {
    expect(await untold(step(text), `language: ${language}\n`)).toHaveLength(1);
  });

  test("the stage's head or a note in it, for the steps that follow", async () => {
    const steps = "1. [D1]\n2. [C1]";
    expect(await untold(`## A\n\nMind the polarity here.\n\n${steps}`)).toEqual([]);
    expect(await untold(`## A\n\n> **NOTICE: wrong polarity.** It bursts.\n\n${steps}`)).toEqual(
      [],
    );
    const between = "1. [D1]\n\n> **NOTICE: wrong polarity.** It bursts.\n\n2. [C1]\n3. [LED1]";
    expect(await untold(`## A\n\n${between}`)).toEqual([]);
    const later = "1. [D1]\n2. [R1]\n\n> **NOTICE: wrong polarity.** It bursts.\n\n3. [C1]";
    expect(await untold(`## A\n\n${later}`)).toEqual(["D1"]);
    expect(await untold(`## A\n\n### Diodes\n\nCathode to the mark.\n\n${steps}`)).toEqual([]);
  });

  test("another stage not at all, by a note before the first stage for all", async () => {
    const other = "## A\n\n> **NOTICE: wrong polarity.** It bursts.\n\n1. [D1]\n\n## B\n\n1. [C1]";
    expect(await untold(other)).toEqual(["C1"]);
    const all = "## Before\n\n> **NOTICE: wrong polarity.** It bursts.\n\n## B\n\n1. [C1]";
    expect(await untold(all)).toEqual([]);
    const burns = "## Before\n\n> **CAUTION: hot surface.** It burns.\n\n## B\n\n1. [C1]";
    expect(await untold(burns)).toEqual(["C1"]);
  });

  test("an earlier step on the same kind of part, not on another", async () => {
    expect(await untold("## A\n\n1. Cathode to the mark. [D1]\n2. [D2]\n3. [C1]")).toEqual(["C1"]);
    expect(await untold("## A\n\n1. [D2]\n2. Cathode to the mark. [D1]")).toEqual(["D2"]);
  });

  test("the step above a table, for its rows", async () => {
    const table = "| Part | Fit |\n|---|---|\n| diode | [D1] |\n| capacitor | [C1] |";
    expect(await untold(`## A\n\n1. Fit the parts below, mind the polarity.\n\n${table}`)).toEqual(
      [],
    );
    expect(await untold(`## A\n\n1. Fit the parts below.\n\n${table}`)).toEqual(["D1", "C1"]);
  });

  test("the step that places a part, when it is only soldered later", async () => {
    const body = "## A\n\n1. Push it in. [place: LED1]\n\n## B\n\n1. Solder it. [LED1]";
    expect(await untold(body)).toEqual(["LED1"]);
    const sockets = "## A\n\n1. Solder the socket. [XU1]\n2. Push the chip in. [insert: U1]";
    expect(await untold(sockets)).toEqual(["U1"]);
  });

  test("words of no language that is not known", async () => {
    expect(await untold(step("[D1]"), "language: fi\n")).toEqual([]);
  });

  test("the text as it stands after each edit", async () => {
    const service = new Service(new MemoryFiles({ "file:///k/p.csv": LIST }));
    const text = "---\nparts: p.csv\n---\n\n## A\n\nHead.\n\n### B\n\nText.\n\n1. [D1]\n2. [C1]\n";
    service.open("file:///k/g.md", 0, text);
    let version = 0;
    let now = text;
    const edited = async (from: string, to: string) => {
      const start = now.indexOf(from);
      service.edit("file:///k/g.md", ++version, [
        { span: { start, end: start + from.length }, text: to },
      ]);
      now = now.replace(from, to);
      await service.settle();
      service.takeChanges();
      return service.diagnoses("file:///k/g.md").filter(({ code }) => code === "polarity-note")
        .length;
    };
    expect(await edited("Head.", "Head!")).toBe(2);
    expect(await edited("Text.", "Mind the polarity.")).toBe(0);
    expect(await edited("Mind", "Forget")).toBe(0);
    expect(await edited("the polarity", "it")).toBe(2);
    expect(await edited("Head!", "Cathode to the mark.")).toBe(0);
    expect(await edited("Cathode to the mark.", "Head.")).toBe(2);
    expect(await edited("[D1]", "Cathode left. [D1]")).toBe(1);
  });
});

describe("Rings", () => {
  // IEC 60062: yellow violet red and yellow violet orange; three figures need the same.
  test.each([
    [4700, 47_000, true],
    [47_000, 4700, true],
    [1, 10, true],
    [0.1, 1, true],
    [4700, 470_000, false],
    [4700, 5100, false],
    [4700, 4700, false],
    [0, 0, false],
  ])("of %d Ω and %d Ω differ by one: %s", (one, other, differ) => {
    expect(ringsDifferByOne(one, other)).toBe(differ);
  });
});

describe("Parts look like", () => {
  test.each([
    ["D", { value: "1N4148", package: "D_DO-35_SOD27" }, "glass diode"],
    ["Q", { value: "BC547", package: "TO-92_Inline" }, "TO-92"],
    ["U", { value: "78L05", package: "TO-92" }, "TO-92"],
    ["U", { value: "NE555", package: "DIP-8_W7.62mm" }, "chip DIP8"],
    ["U", { value: "NE555", package: "PDIP-8" }, "chip DIP8"],
    ["R", { value: "4k7", package: "R_Axial_DIN0207" }, "resistor"],
    ["R", { value: "4k7" }, "resistor"],
  ])("others: %s %j", (letters, hints, look) => {
    const found = lookOf(letters, hints);
    expect(found && `${found.kind} ${found.case}`.trim()).toBe(look);
  });

  test.each([
    ["D", { value: "1N4007", package: "DO-41" }],
    ["R", { value: "4k7", package: "R_0805_2012Metric" }],
    ["Q", { value: "TIP31", package: "TO-220-3" }],
    ["XU", { value: "socket", package: "DIP-8_Socket" }],
    ["C", { value: "100n", package: "C_Disc_D5.0mm" }],
  ])("no others: %s %j", (letters, hints) => {
    expect(lookOf(letters, hints)).toBeUndefined();
  });
});

describe("Parts that look alike", () => {
  const ALIKE = `Designator,Quantity,Value,Package,Height
D1,1,1N4148,DO-35,1.9
D2,1,BZX55C5V1,DO-35,1.9
D3,1,1N4007,DO-41,2.7
Q1,1,BC547,TO-92,5
Q2,1,BC557,TO-92,5
R1,1,4k7,Axial,2.5
R2,1,47k,Axial,2.5
R3,1,470k,Axial,2.5
R4,1,5k1,Axial,2.5
"R5, R6",2,10k,Axial,2.5
`;
  async function alike(body: string, more = ""): Promise<string[]> {
    const found = await messages(kit(`## A\n\n${body}`, ALIKE, more), "look-alike");
    return found.map((one) => one.replace(/^information: (.*?) (?:are|differ|have) .*$/, "$1"));
  }

  test.each([
    ["1. [D1, D2]", ["1N4148 (D1) and BZX55C5V1 (D2)"]],
    ["1. [D1]\n2. [R4]\n3. [D2]", ["1N4148 (D1) and BZX55C5V1 (D2)"]],
    ["1. [R1, R2]", ["4k7 (R1) and 47k (R2)"]],
    ["1. [R1, R2, R3]", ["4k7 (R1) and 47k (R2)", "47k (R2) and 470k (R3)"]],
    ["1. [Q1, Q2]", ["BC547 (Q1) and BC557 (Q2)"]],
  ])("are told of in %j", async (body, expected) => {
    expect(await alike(body)).toEqual(expected);
  });

  // Tempting, and told apart or not alike.
  test.each([
    ["en", "1. [D1, D3]"],
    ["en", "1. [R1, R3, R4]"],
    ["en", "1. [R5, R6]"],
    ["en", "1. [D1]\n\n## B\n\n1. [D2]"],
    ["en", "1. [D1]\n2. The Zener looks the same: read the print. [D2]"],
    ["en", "1. [Q1 = BC547] [Q2]"],
    ["en", "1. [R1] yellow violet red\n2. [R2]"],
    ["en", "1. Measure each of them with the multimeter. [R1, R2]"],
    [
      "en",
      "| Rings | Fit |\n|---|---|\n| yellow violet red | [R1] |\n| yellow violet orange | [R2] |",
    ],
    ["de", "1. Nicht verwechseln: [D1, D2]"],
    ["de", "1. gelb violett rot [R1], gelb violett orange [R2]"],
    ["fr", "1. Ne pas confondre [D1] et [D2]"],
    ["nl", "1. Verwissel ze niet: [D1, D2]"],
    ["es", "1. No confundir [D1] y [D2]"],
    ["tr", "1. [D1, D2]"],
  ])("are silent in %s: %j", async (language, body) => {
    expect(await alike(body, `language: ${language}\n`)).toEqual([]);
  });

  test("stand at the second, with the first beside it", async () => {
    const { diagnoses } = await checkFixture(kit("## A\n\n1. [D1]\n2. [D2]", ALIKE), "look-alike");
    const [one] = diagnoses;
    expect([one!.start.line, one!.related[0]!.start.line]).toEqual([7, 6]);
  });
});

describe("A note on polarity, put in by the fix,", () => {
  test.each(LANGUAGES)(
    "is enough for the steps of the stage that follow it, in %s",
    async (language) => {
      const body = "## A\n\n1. [R1]\n2. [D1, D2]\n3. [C1]\n4. [LED1]";
      const text = kit(body, LIST, `language: ${language}\n`);
      const { diagnoses } = await checkFixture(text, "polarity-note");
      expect(diagnoses.length).toBe(3);
      const [fix] = diagnoses[0]!.fixes();
      const mended = applyEdits(fixture(text).files.get("guide.md")!, fix!.edits[0]!.edits);
      const files = new Map([...fixture(text).files, ["guide.md", mended] as const]);
      const { found } = await checkFiles(files);
      const own = ["polarity-note", "hazard-incomplete", "hazard-word", "hazard-late"];
      expect(found.filter(({ code }) => own.includes(code))).toEqual([]);
    },
  );
});
