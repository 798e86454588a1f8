/** Tools and consumables: what steps name, what lists have, and the table of `list tools`. */
import { describe, expect, test } from "vitest";
import { readWords } from "../../server/src/model/wordReader.ts";
import { Service } from "../../server/src/service.ts";
import { LANGUAGES } from "../../server/src/text/language.ts";
import { de } from "../../server/src/trade/tools/de.ts";
import { en } from "../../server/src/trade/tools/en.ts";
import { es } from "../../server/src/trade/tools/es.ts";
import { THING_WORDS } from "../../server/src/trade/tools/find.ts";
import { fr } from "../../server/src/trade/tools/fr.ts";
import { nl } from "../../server/src/trade/tools/nl.ts";
import { CONSUMABLES, TOOLS } from "../../server/src/trade/tools/tool.ts";
import { applyFix, checkFixture, fixture } from "../fixture.ts";
import { MemoryFiles } from "../memoryFiles.ts";
import { kit } from "./kit.ts";

const LIST = "Designator,Quantity,Value\nR1,1,10k\n,1,hex key 2.5 mm\n";
const WORDS = { en, de, fr, nl, es };
const CODES = ["unlisted-tool", "unlisted-consumable"];

/** What is reported, as it stands in the guide. */
async function unlisted(body: string, more = ""): Promise<string[]> {
  const { files, diagnoses } = await checkFixture(kit(body, LIST, more));
  const text = files.get("guide.md")!;
  return diagnoses
    .filter(({ code }) => CODES.includes(code))
    .map(({ span }) => text.slice(span.start, span.end));
}

const step = (text: string) => `## A\n\n1. ${text}`;

describe("Words for tools and consumables", () => {
  test.each(LANGUAGES)("find in %s each thing by its own patterns", (language) => {
    for (const thing of [...TOOLS, ...CONSUMABLES]) {
      const found = new Set(
        WORDS[language][thing].map((pattern) => {
          const words = readWords(pattern.replaceAll("*", ""), 0);
          return THING_WORDS[language].at(words, 0)?.meaning;
        }),
      );
      expect(found, `${language}: ${thing}`).toEqual(new Set([thing]));
    }
  });

  test.each([
    ["en", "Turn it with a screwdriver.", "screwdriver"],
    ["en", "Tighten it with a torque screwdriver.", "torque screwdriver"],
    ["en", "Clamp it in the vice.", "the vice"],
    ["en", "Cut it with side-cutters.", "side-cutters"],
    ["en", "Spread some thermal paste.", "thermal paste"],
    ["de", "Mit einem Lötkolben erwärmen.", "Lötkolben"],
    ["de", "Die Drähte mit dem Seitenschneider kürzen.", "Seitenschneider"],
    ["fr", "Coupez les fils avec une pince coupante.", "pince coupante"],
    ["fr", "Serrez la pièce dans l'étau.", "étau"],
    ["nl", "Knip de draden met een zijkniptang af.", "zijkniptang"],
    ["es", "Corte los hilos con los alicates de corte.", "alicates de corte"],
  ])("report in %s: %s", async (language, text, named) => {
    expect(await unlisted(step(text), `language: ${language}\n`)).toEqual([named]);
  });

  // Tempting, and no tool that the step needs.
  test.each([
    ["en", "Drill the hole, file its edge, tape the leads and saw off the shaft."],
    ["en", "Fit the fuse, or vice versa. The file guide.md tells more."],
    ["en", "Hold it with your fingers, never with pliers."],
    ["en", "Do not use a screwdriver of metal."],
    ["en", "Solder it without any liquid flux."],
    ["en", "Take the hex key that is in the bag."],
    ["en", "Magnetic flux lacquered in tapes."],
    ["de", "Nicht mit der Zange biegen."],
    ["fr", "Ne serrez pas avec la pince plate."],
    ["pt", "Use um multimeter."],
  ])("are silent in %s: %s", async (language, text) => {
    expect(await unlisted(step(text), `language: ${language}\n`)).toEqual([]);
  });
});

describe("A tool", () => {
  const NEEDS = step("Measure with a multimeter.\n2. Use the multimeter again.");

  test("is reported once, at its first step", async () => {
    expect(await unlisted(NEEDS)).toEqual(["multimeter"]);
  });

  test("is listed by the front matter, by a mark anywhere, or by the parts list", async () => {
    expect(await unlisted(NEEDS, "tools: [digital multimeter]\n")).toEqual([]);
    expect(await unlisted(`${NEEDS}\n3. Put it away. [tool: multimeter]`)).toEqual([]);
    expect(await unlisted(step("Use the hex key."))).toEqual([]);
  });

  test("that a note or an introduction names is not needed by a step", async () => {
    const body = "## A\n\nA multimeter helps.\n\n> **NOTICE: dust.** Use tweezers.\n\n1. [R1]";
    expect(await unlisted(body)).toEqual([]);
  });

  test("is listed by the fix", async () => {
    const text = kit(NEEDS, LIST);
    const { diagnoses } = await checkFixture(text, "unlisted-tool");
    const [fix] = diagnoses[0]!.fixes();
    expect(fix!.safe).toBe(false);
    expect(applyFix(fixture(text).files, fix!).get("guide.md")).toContain(
      "1. Measure with a multimeter. [tool: multimeter]\n",
    );
  });

  test("is reported again when its mark goes, wherever that stands", async () => {
    const files = new MemoryFiles({ "file:///k/p.csv": LIST });
    const service = new Service(files);
    const text = `---\nparts: p.csv\n---\n\n${NEEDS}\n\n## B\n\n1. [tool: multimeter]\n`;
    service.open("file:///k/g.md", 0, text);
    const found = async () => {
      await service.settle();
      service.takeChanges();
      return service.diagnoses("file:///k/g.md").filter(({ code }) => code === "unlisted-tool");
    };
    expect(await found()).toHaveLength(0);
    const at = text.indexOf("[tool");
    service.edit("file:///k/g.md", 1, [{ span: { start: at, end: at + 1 }, text: "" }]);
    expect(await found()).toHaveLength(1);
    service.edit("file:///k/g.md", 2, [{ span: { start: at, end: at }, text: "[" }]);
    expect(await found()).toHaveLength(0);
    const first = text.indexOf("multimeter");
    service.edit("file:///k/g.md", 3, [
      { span: { start: at, end: at + 18 }, text: "" },
      { span: { start: first, end: first + 10 }, text: "thumb" },
    ]);
    expect((await found()).map(({ start }) => start.line)).toEqual([7]);
  });
});
