/** Fixes that put notes before steps: they remove their finding, add none, and spare the rest. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Diagnosis } from "../../../server/src/service.ts";
import { applyFix, checkFiles } from "../../fixture.ts";

const LIST = "Designator,Quantity,Value\nR1,1,10k\nR2,1,1k\n";
const HEAD = "---\nparts: parts.csv\noff-board: [R1, R2]\n---\n\n";

type Files = ReadonlyMap<string, string>;

function filesOf(body: string, more = ""): Files {
  const head = HEAD.replace("---\n\n", `${more}---\n\n`);
  return new Map([
    ["guide.md", body.includes("\r\n") ? head.replaceAll("\n", "\r\n") + body : head + body],
    ["parts.csv", LIST],
  ]);
}

async function fixesOf(files: Files, code: string) {
  const { diagnoses } = await checkFiles(files);
  return diagnoses
    .filter((one) => one.code === code)
    .flatMap((one) => one.fixes().map((fix) => ({ one, fix })));
}

/** The guide's body after the first fix of a check. */
async function fixed(body: string, code: string, more = ""): Promise<string> {
  const files = filesOf(body, more);
  const [first] = await fixesOf(files, code);
  return applyFix(files, first!.fix)
    .get("guide.md")!
    .split(/---\r?\n\r?\n/)[1]!;
}

const NOTE =
  "> **CAUTION: eye injury.** Bits fly off faster than you can blink. Wear safety glasses. Local rules and qualified practice come first.\n> <!-- complete this note: what is special in this kit, and what must the builder do? -->";

describe("The note that is missing is inserted", () => {
  test("before the step, parted from its neighbours by blank lines", async () => {
    const body = "## Board\n\n1. Look.\n2. Trim the leads.\n3. Look again.";
    expect(await fixed(body, "hazard-missing")).toBe(
      `## Board\n\n1. Look.\n\n${NOTE}\n\n2. Trim the leads.\n3. Look again.`,
    );
  });

  test("at the stage's head when the step is its first", async () => {
    const body = "## Board\n\n1. Trim the leads.";
    expect(await fixed(body, "hazard-missing")).toBe(`## Board\n\n${NOTE}\n\n1. Trim the leads.`);
  });

  test("above the comments that concern the step", async () => {
    const body =
      "## Board\n\n1. Look.\n\n<!-- allow x: y -->\n<!-- power on -->\n\n2. Trim the leads.";
    expect(await fixed(body, "hazard-missing")).toBe(
      `## Board\n\n1. Look.\n\n${NOTE}\n\n<!-- allow x: y -->\n<!-- power on -->\n\n2. Trim the leads.`,
    );
  });

  test("below a parts table, which is written anew as a whole", async () => {
    const table = "<!-- parts table -->\n| Part |\n|---|\n| R1 |\n<!-- end -->";
    const body = `## Board\n\n${table}\n\n1. Trim the leads.`;
    expect(await fixed(body, "hazard-missing")).toBe(
      `## Board\n\n${table}\n\n${NOTE}\n\n1. Trim the leads.`,
    );
  });

  test("before the step that a sub-step belongs to", async () => {
    const body = "## Board\n\n1. Look.\n2. Then:\n   1. look;\n   2. trim the leads.";
    expect(await fixed(body, "hazard-missing")).toContain(`\n\n${NOTE}\n\n2. Then:\n   1. look;`);
  });

  test("before the table whose row the step is", async () => {
    const body = "## Board\n\n| Do | Part |\n|---|---|\n| look | [R1] |\n| trim the leads | [R2] |";
    expect(await fixed(body.replace("trim", "Trim"), "hazard-missing")).toContain(
      `## Board\n\n${NOTE}\n\n| Do | Part |`,
    );
  });

  test("with the line ends of the text", async () => {
    const body = "## Board\r\n\r\n1. Look.\r\n2. Trim the leads.\r\n";
    const text = await fixed(body, "hazard-missing");
    expect(text).toContain(`1. Look.\r\n\r\n${NOTE.replace("\n", "\r\n")}\r\n\r\n2. Trim`);
    expect(text.replaceAll("\r\n", "")).not.toMatch(/[\r\n]/);
  });

  test.each([
    [
      "de",
      "Die Drahtenden abschneiden.",
      "> **VORSICHT: Augenverletzung.**",
      "Örtliche Vorschriften",
    ],
    ["fr", "Coupez les pattes.", "> **ATTENTION: lésion oculaire.**", "Les règles locales"],
    ["nl", "Knip de draadjes af.", "> **VOORZICHTIG: oogletsel.**", "Plaatselijke regels"],
    ["es", "Corte las patillas.", "> **PRECAUCIÓN: lésion ocular.**", "Las normas locales"],
  ])("in the guide's language, with its deferral (%s)", async (language, step, opening, defers) => {
    const text = await fixed(`## A\n\n1. ${step}`, "hazard-missing", `language: ${language}\n`);
    expect(text).toContain(opening.replace("lésion ocular.", "lesión ocular."));
    expect(text).toContain(defers);
  });
});

describe("The note that is late is moved", () => {
  const note = "> **CAUTION: eye injury.** Bits fly.\n> Wear safety glasses.";

  test("from between the steps, and all else stays", async () => {
    const body = `## Board\n\n1. Look.\n2. Trim the leads.\n\n${note}\n\n3. Look again.\n`;
    expect(await fixed(body, "hazard-late")).toBe(
      `## Board\n\n1. Look.\n\n${note}\n\n2. Trim the leads.\n\n3. Look again.\n`,
    );
  });

  test("from inside a step, without its indentation", async () => {
    const body = `## Board\n\n1. Trim the leads.\n\n   ${note.replace("\n", "\n   ")}\n\n2. Look again.\n`;
    expect(await fixed(body, "hazard-late")).toBe(
      `## Board\n\n${note}\n\n1. Trim the leads.\n\n2. Look again.\n`,
    );
  });

  test("from the end of the text", async () => {
    const body = `## Board\n\n1. Trim the leads.\n\n${note}`;
    expect(await fixed(body, "hazard-late")).toBe(`## Board\n\n${note}\n\n1. Trim the leads.\n\n`);
  });

  test("and what stood below it stays a block of its own", async () => {
    const body = `## Board\n\n1. Trim the leads.\n${note}\n\nText.\n`;
    expect(await fixed(body, "hazard-late")).toBe(
      `## Board\n\n${note}\n\n1. Trim the leads.\n\nText.\n`,
    );
    const next = `## Board\n\n1. Trim the leads.\n${note}\n### Then\n\nText.\n`;
    expect(await fixed(next, "hazard-late")).toBe(
      `## Board\n\n${note}\n\n1. Trim the leads.\n\n### Then\n\nText.\n`,
    );
  });

  test.each([
    ["it is all that stands below a heading", `### Care\n\n${note}\n\n### Then\n\nText.`],
    ["it is all below the last heading", `### Care\n\n${note}\n`],
    ["it is all above an underlined heading", `### Care\n\n${note}\n\nThen\n---\n\nText.`],
    ["what follows would sink into the step", `${note}\n\n   Indented text.`],
    ["it uses a part of its step", `2. Look.\n\n   ${note.replace("\n", " Fit [R1].\n   ")}`],
    ["it bears a label", `2. Look.\n\n   ${note.replace("\n", " [#here]\n   ")}`],
    ["it takes a reading", `2. Look.\n\n   ${note.replace("\n", " {read V(A) = 5 V}\n   ")}`],
    ["a list item holds it", `- ${note.replace("\n", "\n  ")}`],
  ])("but not where %s", async (_, below) => {
    const files = filesOf(`## Board\n\n1. Trim the leads.\n\n${below}`);
    const { diagnoses } = await checkFiles(files);
    expect(diagnoses.map(({ code }) => code)).toContain("hazard-late");
    expect(await fixesOf(files, "hazard-late")).toEqual([]);
  });

  test("from below a heading that is a step", async () => {
    const body = `## Board\n\n### Fit [R1], trim the leads\n\n1. Trim the leads.\n\n### Fit [R2]\n\n${note}\n\n### Look\n\nText.`;
    expect(await fixed(body, "hazard-late")).not.toMatch(/R2\]\n\n>/);
  });
});

const BLOCKS = [
  "1. Trim the leads.",
  "2. Drill the lid.\n",
  "3. Brush it with acetone.\n   1. Dry it.\n   2. Trim the leads.\n",
  "1. Look.\n\n   Then look again.\n",
  "<!-- allow hazard-missing: so -->\n\n4. Drill the lid.\n",
  "7. Fit [R1].\n",
  "| Do | Part |\n|---|---|\n| Trim the leads. | [R2] |\n",
  "Text, with [R1] and\na second line: saw it.\n",
  "- Drill [R2].\n- Look.\n",
  "> **CAUTION: eye injury.** Bits fly. Wear safety glasses.\n",
  "> **WARNING: moving parts, fire and fumes.** They hurt.\n> Take care: do not touch them.\n",
  "### Drill\n",
  "## Next stage\n",
  "",
];
const anyBody = fc
  .array(fc.constantFrom(...BLOCKS), { minLength: 1, maxLength: 7 })
  .map((blocks) => `## Board\n\n${blocks.join("\n")}\n`);

/** What a finding says and where, whatever stands before it in the text. */
function whatOf({ code, message, start, uri }: Diagnosis): string {
  return `${uri} ${code} ${message} ${start.column}`;
}

/** The lines without the note and without blank ones. */
function otherLines(text: string, code: string): readonly string[] {
  const lines = text.split("\n").filter((line) => line.trim() !== "");
  if (code === "hazard-late") return lines.map((line) => line.trim()).sort();
  return lines.filter(
    (line) => !/^> (?:\*\*\w+: |<!-- complete)/.test(line) || /Bits fly\.|hurt/.test(line),
  );
}

test.each(["hazard-missing", "hazard-late"])(
  "Wherever a fix of %s is offered, it removes its finding, adds none, and spares all other lines",
  async (code) => {
    let offered = 0;
    await fc.assert(
      fc.asyncProperty(anyBody, async (body) => {
        const files = filesOf(body);
        const before = (await checkFiles(files)).diagnoses.map(whatOf);
        for (const { one, fix } of await fixesOf(files, code)) {
          offered++;
          const after = applyFix(files, fix);
          const text = after.get("guide.md")!;
          const left = (await checkFiles(after)).diagnoses.map(whatOf);
          expect(left.filter((what) => what === whatOf(one)).length, text).toBeLessThan(
            before.filter((what) => what === whatOf(one)).length,
          );
          // The note may cover what a comment allowed to go uncovered.
          const serious = (what: string) => !what.includes(" allow-unused ");
          expect(left.filter(serious).length, text).toBeLessThan(before.filter(serious).length);
          expect(otherLines(text, code)).toEqual(otherLines(files.get("guide.md")!, code));
        }
      }),
      { numRuns: 80 },
    );
    expect(offered).toBeGreaterThan(2);
  },
  120_000,
);

describe("What is due before the power is moved before it", () => {
  const CODE = "power-up-order";

  test("a step that limits the current", async () => {
    const body =
      "## Power\n\n1. Look for solder bridges.\n2. Switch the supply on.\n3. Set the current limit to 50 mA.\n4. Listen.";
    expect(await fixed(body, CODE)).toBe(
      "## Power\n\n1. Look for solder bridges.\n2. Set the current limit to 50 mA.\n3. Switch the supply on.\n4. Listen.",
    );
  });

  test("a step that looks for faults, with its paragraph and its reading of ohms", async () => {
    const check =
      "Check the rail for a short: {read R(TP1) > 1 kΩ}.\n\n   If you read less, look at the joints.";
    const body = `## Power\n\n1. Set the current limit to 50 mA.\n2. Switch the supply on.\n3. ${check}\n`;
    expect(await fixed(body, CODE)).toContain(`2. ${check}\n3. Switch`);
  });

  test("above the comment that says where the power comes", async () => {
    const body =
      "## Power\n\n1. Look for solder bridges.\n\n<!-- power on -->\n\n2. Close the switch.\n3. Set the current limit to 50 mA.\n4. Listen.";
    const after = await fixed(body, CODE);
    expect(after).toMatch(/2\. Set .*<!-- power on -->.*3\. Close /s);
    expect(await fixesOf(filesOf(after), CODE)).toEqual([]);
  });

  test.each([
    ["it takes a reading under power", "3. Set the current limit and measure {read V(TP1) < 5 V}."],
    ["it is a sub-step", "3. Go on:\n   1. set the current limit to 50 mA;\n   2. listen."],
  ])("but not where %s", async (_, step) => {
    const body = `## Power\n\n1. Look for solder bridges.\n2. Switch the supply on.\n${step}`;
    const { found } = await checkFiles(filesOf(body));
    expect(found.map(({ code }) => code)).toContain(CODE);
    expect(await fixesOf(filesOf(body), CODE)).toEqual([]);
  });

  test("but not before the step that fits what it uses", async () => {
    const body =
      "## Power\n\n1. Look for solder bridges.\n2. Solder [R1] and switch the supply on.\n3. Take [remove: R1] out and set the current limit to 50 mA.";
    expect(await fixesOf(filesOf(body), CODE)).toEqual([]);
  });
});
