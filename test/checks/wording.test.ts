/** Checks of wording, each against sentences with the verdict that its source gives. */
import { describe, expect, test } from "vitest";
import { readSettings } from "../../server/src/lsp/settings.ts";
import { Service } from "../../server/src/service.ts";
import { applyFix, checkFixture, fixture } from "../fixture.ts";
import { MemoryFiles } from "../memoryFiles.ts";
import { kit, messages } from "./kit.ts";

const LIST = "Designator,Value\nR1,10k\n";

/** What the findings of one check in these steps stand on. */
async function said(steps: string, code: string, more = ""): Promise<string[]> {
  const { files, diagnoses } = await checkFixture(kit(`## A\n\n${steps}`, LIST, more), code);
  const text = files.get("guide.md")!;
  return diagnoses.map(({ span }) => text.slice(span.start, span.end));
}

async function counts(sentence: string): Promise<number[]> {
  const found = await messages(
    kit(`## A\n\n1. ${sentence}`, LIST, "checks: { long-step: 1 }\n"),
    "long-step",
  );
  return found.map((message) => Number(/has (\d+) words/.exec(message)![1]));
}

/** `words` words and a full stop. */
function sentence(words: number): string {
  return `${Array.from({ length: words }, (_, i) => `w${"abcdefghij"[i % 10]}x`).join(" ")}.`;
}

describe("long-step", () => {
  // Word counts as ASD-STE100 counts: a number with its unit is one word, so is a hyphenated one.
  test.each([
    ["Solder R1 to R4.", 4],
    ["Turn the multimeter to the 20 V range and connect its leads, then switch on the supply.", 16],
    ["The resistor should be soldered now.", 6],
    [
      "Before you switch on, make sure that the lamp limiter is in series with the mains lead and that no speaker is connected.",
      23,
    ],
    ["If the lamp stays bright, switch off at once.", 9],
    ["Use flat-nose pliers.", 3],
    ["Turn it to {VCC} and [R1] by `code` once.", 9],
    ["Solder it (the red one of the two) now.", 6],
    ["Set it. [R1] Look at the ring [R1].", 4],
  ])("counts the words of %s", async (text, words) => {
    expect(Math.max(...(await counts(text)))).toBe(words);
  });

  test("reports 21 words, not 20, and only what instructs", async () => {
    expect(await said(`1. ${sentence(20)}`, "long-step")).toEqual([]);
    expect(await said(`1. ${sentence(21)}`, "long-step")).toEqual([sentence(21)]);
    const apart = `${sentence(30)}\n\n1. Go.\n\n   > **NOTICE: dust.** ${sentence(30)}\n\n### ${sentence(30)}`;
    expect(await said(apart, "long-step")).toEqual([]);
  });

  test("does not add up sentences, decimal points and short forms", async () => {
    const text =
      "Take 2.5 mm of the wire, e.g. the red one, and bend it round. Take 2.5 mm more of it.";
    expect(await said(`1. ${text}`, "long-step")).toEqual([]);
  });

  test("takes its limit from the front matter before that of the settings", async () => {
    const text = `1. ${sentence(12)}`;
    expect(await said(text, "long-step", "checks: { long-step: 11 }\n")).toHaveLength(1);
    const files = new MemoryFiles();
    files.set("file:///k/p.csv", LIST);
    const found = async (limit: number, more = "") => {
      const settings = readSettings({ limits: { "long-step": limit, other: "x" } }, []);
      const service = new Service(files, settings);
      service.open("file:///k/g.md", 1, `---\nparts: p.csv\n${more}---\n\n## A\n\n${text}\n`);
      await service.settle();
      service.takeChanges();
      return service.diagnoses("file:///k/g.md").filter(({ code }) => code === "long-step").length;
    };
    expect(await found(11)).toBe(1);
    expect(await found(11, "checks: { long-step: 12 }\n")).toBe(0);
  });

  test("follows a change of its limit and of the language", async () => {
    const files = new MemoryFiles();
    files.set("file:///k/p.csv", LIST);
    const service = new Service(files);
    const head = "---\nparts: p.csv\nlanguage: en\n";
    const text = `${head}---\n\n## A\n\n1. ${sentence(21)}\n`;
    service.open("file:///k/g.md", 1, text);
    const found = async () => {
      await service.settle();
      service.takeChanges();
      return service.diagnoses("file:///k/g.md").filter(({ code }) => code === "long-step").length;
    };
    expect(await found()).toBe(1);
    const at = head.length;
    const limit = "checks: { long-step: 30 }\n";
    service.edit("file:///k/g.md", 2, [{ span: { start: at, end: at }, text: limit }]);
    expect(await found()).toBe(0);
    service.edit("file:///k/g.md", 3, [{ span: { start: at, end: at + limit.length }, text: "" }]);
    expect(await found()).toBe(1);
    service.edit("file:///k/g.md", 4, [{ span: { start: at - 3, end: at - 1 }, text: "fi" }]);
    expect(await found()).toBe(0);
  });

  test("has its limit explained where another check is given one", async () => {
    const more = "checks: { height-order: 3, long-stp: 20 }\n";
    expect(await messages(kit("## A\n\n1. [R1]", LIST, more), "front-matter")).toEqual(
      [
        'warning: No check is called "long-stp", so this sets nothing. Did you mean long-step?',
        "warning: height-order has no limit. Write off, hint, info, warning or error; numbers are for long-step, several-actions.",
      ].reverse(),
    );
  });

  test("is silent in languages it does not know", async () => {
    expect(await said(`1. ${sentence(30)}`, "long-step", "language: ja\n")).toEqual([]);
    expect(await said(`1. ${sentence(30)}`, "long-step", "language: de-AT\n")).toHaveLength(1);
  });
});

describe("several-actions", () => {
  test.each([
    ["en", "Drill the hole, fit the part and tighten the screw.", "fit"],
    ["en", "Fit the socket. Then carefully drill the case.", "drill"],
    ["de", "Bohren Sie das Loch und löten Sie den Draht an.", "löten"],
    ["de", "Das Loch bohren, R1 einlöten.", "einlöten"],
    ["fr", "Percez le trou, puis soudez le fil.", "soudez"],
    ["nl", "Boor het gat en soldeer de draad.", "soldeer"],
    ["nl", "Het gat boren en de draad vastsolderen.", "vastsolderen"],
    ["es", "Taladre el agujero y suelde el cable.", "suelde"],
  ])("reports in %s: %s", async (language, text, verb) => {
    expect(await said(`1. ${text}`, "several-actions", `language: ${language}\n`)).toEqual([verb]);
  });

  test("takes a German noun behind a comma for no verb", async () => {
    const text = "1. Löten Sie den Draht an J4, Klemme 1, fest.";
    expect(await said(text, "several-actions", "language: de\n")).toEqual([]);
  });

  // Tempting, and no second kind of work.
  test.each([
    ["en", "Bend the leads, push it in, solder it and cut the leads."],
    ["en", "Switch it on and read the current."],
    ["en", "Fit the trimmer with its screw up, so that you can adjust it."],
    ["en", "Solder it. Do not tighten the screw yet."],
    ["en", "Solder it before you screw the panel on."],
    ["en", "Solder it. If the hole is too small, drill it again."],
    ["en", "Fit the drill guide. The drilled holes come later."],
    ["en", "Wind the coil on a drill bit of 8 mm as a former."],
    ["de", "R1 einlöten, ohne zu bohren; das Bohren folgt."],
    ["de", "Löten Sie R1 ein. Falls das Loch zu klein ist, bohren Sie es auf."],
    ["fr", "Soudez le fil avant de percer le boîtier."],
    ["es", "Suelde el cable antes de taladrar la caja."],
    ["pl", "Drill the hole and solder it."],
  ])("is silent in %s: %s", async (language, text) => {
    expect(await said(`1. ${text}`, "several-actions", `language: ${language}\n`)).toEqual([]);
  });

  test("counts sub-steps by themselves, and notes not at all", async () => {
    const steps =
      "1. Build it.\n   1. Drill it.\n   2. Solder it.\n\n   > **NOTICE: dust.** Drill it.";
    expect(await said(steps, "several-actions")).toEqual([]);
  });

  test("takes a limit", async () => {
    const steps = "1. Drill it and solder it.";
    expect(await said(steps, "several-actions", "checks: { several-actions: 2 }\n")).toEqual([]);
  });
});

describe("not-imperative", () => {
  test.each([
    ["The resistor should be soldered now.", "should be soldered"],
    ["All leads must then be cut.", "must then be cut"],
    ["R1 has to be carefully bent.", "has to be carefully bent"],
    ["The chip is now inserted.", "is now inserted"],
    ["You must solder it.", "You must solder"],
    ["Next we fit the socket.", "we fit"],
  ])("reports %s", async (text, telling) => {
    expect(await said(`1. ${text}`, "not-imperative")).toEqual([telling]);
  });

  test.each([
    "Solder the resistor.",
    "You should see 5 V now.",
    "It must be flat, and it must not be hot.",
    "Do it before you solder it, and check what you have soldered.",
    "They were screwed down first. It is fitted in step 3.",
    "The leads can be bent. You may cut them.",
  ])("is silent on %s", async (text) => {
    expect(await said(`1. ${text}`, "not-imperative")).toEqual([]);
  });

  test("speaks English only, and of steps only", async () => {
    const text = "1. The resistor should be soldered now.";
    expect(await said(text, "not-imperative", "language: nl\n")).toEqual([]);
    expect(await said("The kit must be soldered.", "not-imperative")).toEqual([]);
  });
});

describe("number-unit", () => {
  // NIST SP 811 (2008) 7.2, with its examples of the kind: a space, also for °C and %.
  test.each([
    ["10kΩ", "10 kΩ"],
    ["5V", "5 V"],
    ["30.2°C", "30.2 °C"],
    ["30.2° C", "30.2 °C"],
    ["5%", "5 %"],
    ["100nF", "100 nF"],
    ["2,5mm", "2,5 mm"],
    ["0.5Nm", "0.5 N·m"],
    ["0.5 Nm", "0.5 N·m"],
    ["50 cNm", "50 cN·m"],
    ["4.7 KΩ", "4.7 kΩ"],
    ["7 Mhz", "7 MHz"],
    [".47 Ω", "0.47 Ω"],
    [".5A", "0.5 A"],
    ["10-kΩ", "10 kΩ"],
    ["8K/W", "8 K/W"],
  ])("changes %s to %s", async (wrong, right) => {
    const text = kit(`## A\n\n1. Take ${wrong} of it.`, LIST);
    const { diagnoses } = await checkFixture(text, "number-unit");
    expect(diagnoses).toHaveLength(1);
    const [fix] = diagnoses[0]!.fixes();
    expect(fix!.safe).toBe(true);
    const after = applyFix(fixture(text).files, fix!).get("guide.md")!;
    expect(after).toContain(`Take ${right} of it.`);
  });

  test.each([
    "10 kΩ, 30.2 °C, 5 %, 0.5 N·m and 0.5\u00a0N·m",
    "4k7, 2R2, 100n, 3V3, 6V2 and 10M",
    "3x10mm, 5×20mm, M3x10, 0805 and 24LC256",
    "1N4148, 78L05, 2N3055, 10W-40 and TO-92",
    "+5V, −12V, pin 2A, marked 5V and 5V_A",
    "the 40m band of the 1980s, 9V-Block",
    "`5V`, [R1 = 10kΩ], {5V}, <https://a.b/5V>, ![5V](5V.png)",
    "30° and 22′",
  ])("leaves %s alone", async (text) => {
    expect(await said(`1. Take ${text}.`, "number-unit")).toEqual([]);
  });

  test("takes the hyphen for wrong in English only", async () => {
    expect(await said("1. Ein 10-kΩ Poti.", "number-unit", "language: de\n")).toEqual([]);
  });
});

describe("repeated-word", () => {
  test.each([
    ["Turn the the screw.", "the the"],
    ["Turn it by\n   by hand.", "by\n   by"],
    ["The The screw.", "The The"],
  ])("reports %s", async (text, twice) => {
    expect(await said(`1. ${text}`, "repeated-word")).toEqual([twice]);
  });

  test.each([
    "It is so that that part fits.",
    "The rings are brown black black red.",
    "Press it in. In time it holds. Go, go. Beep-beep.",
    "Use M3 M3 and R1 [R1] R1.",
    "Very **very** hot.",
  ])("is silent on %s", async (text) => {
    expect(await said(`1. ${text}`, "repeated-word")).toEqual([]);
  });

  test("knows what other languages double", async () => {
    expect(await said("1. Die die Löcher.", "repeated-word", "language: de\n")).toEqual([]);
    expect(await said("1. Nous nous y mettons.", "repeated-word", "language: fr\n")).toEqual([]);
    expect(await said("1. den Draht Draht", "repeated-word", "language: de\n")).toHaveLength(1);
    expect(await said("1. pelan pelan", "repeated-word", "language: id\n")).toEqual([]);
  });
});

describe("heading-empty", () => {
  test("reports a heading without text, and one without content before its like", async () => {
    const body = "1. Go.\n\n## B\n\n### C\n\n## D\n\n##\n\nText.\n\n ## E\n ## F\n\nText.";
    expect(await said(body, "heading-empty")).toEqual(["### C", "## D", "##", "## E"]);
  });

  test("leaves alone the last heading, a step, and one with a lower one below", async () => {
    const body =
      "1. Go.\n\n## B\n\n### C [R1]\n\n### D\n\n![p](p.svg)\n\n### ![p](p.svg)\n\nText.\n\n## E";
    expect(await said(body, "heading-empty")).toEqual([]);
  });

  test("follows what comes below it", async () => {
    const service = new Service(new MemoryFiles({ "file:///k/p.csv": LIST }));
    const text = "---\nparts: p.csv\n---\n\n## A\n\n## B\n\n1. Go.\n";
    service.open("file:///k/g.md", 0, text);
    const found = async () => {
      await service.settle();
      service.takeChanges();
      return service.diagnoses("file:///k/g.md").filter(({ code }) => code === "heading-empty");
    };
    expect(await found()).toHaveLength(1);
    const at = text.indexOf("## B");
    service.edit("file:///k/g.md", 1, [{ span: { start: at, end: at }, text: "x\n\n" }]);
    expect(await found()).toHaveLength(0);
    service.edit("file:///k/g.md", 2, [{ span: { start: at, end: at + 3 }, text: "#" }]);
    expect(await found()).toHaveLength(0);
  });
});
