import { describe, expect, test } from "vitest";
import { applyFix, checkFixture, fixture } from "../fixture.ts";
import { drawn, kit, messages } from "./kit.ts";

const LIST = `
Designator,Quantity,Value,Height
"R1, R2, R3, R4",4,10k,2.5
"C1, C2",2,470u,20
,40,M3x10,`;

/** Titles of the fixes of one check, the safe ones marked. */
async function fixesOf(body: string, code: string): Promise<string[]> {
  const { diagnoses } = await checkFixture(kit(body, LIST), code);
  return diagnoses.flatMap((one) =>
    one.fixes().map((fix) => `${fix.title}${fix.safe ? " (safe)" : ""}`),
  );
}

/** The guide after the first fix of the first finding of one check. */
async function fixed(body: string, code: string): Promise<string> {
  const text = kit(body, LIST);
  const { diagnoses } = await checkFixture(text, code);
  const after = applyFix(fixture(text).files, diagnoses[0]!.fixes()[0]!);
  return after.get("guide.md")!.split("---\n\n")[1]!;
}

describe("Step labels", () => {
  test("are found wherever they stand, and may be unused", async () => {
    const body =
      "## A\n\n1. [see: b] and [see: a].\n2. Here. [#a]\n\n## B [#b]\n\n1. Text. [#unused]";
    expect(await messages(kit(body, LIST), "step-label")).toEqual([]);
  });

  test("that are unknown and near to none are told how to make", async () => {
    expect(await messages(kit("## A\n\n1. See [see: first-power].", LIST), "step-label")).toEqual([
      'error: No step carries the label "first-power", so the published page has no number to show here. Write `[#first-power]` into the step that is meant.',
    ]);
  });

  test("that stand three times are two findings, each with the first place beside it", async () => {
    const body = "## A\n\n1. [#a]\n2. [#a]\n3. [#a]";
    const { diagnoses } = await checkFixture(kit(body, LIST), "step-label");
    expect(diagnoses.map((one) => one.start.line)).toEqual([7, 8]);
    expect(diagnoses.map((one) => one.related.map((place) => place.start.line))).toEqual([
      [6],
      [6],
    ]);
  });

  test("change to the nearest by the fix", async () => {
    const body = "## A\n\n1. Here. [#first-power]\n2. See [see: frist-power].";
    expect(await fixed(body, "step-label")).toContain("2. See [see: first-power].");
  });
});

describe("Allow-comments", () => {
  const LATE = "1. [C1]\n2. [R1]";

  test("that suppress something and say why are right, at a step and at a stage", async () => {
    const why = "<!-- allow height-order: so -->";
    for (const body of [`1. [C1]\n\n${why}\n\n2. [R1]`, `${why}\n\n${LATE}`]) {
      const { found } = await checkFixture(kit(`## A\n\n${body}`, LIST));
      expect(found.filter((one) => /allow|height/.test(one.code))).toEqual([]);
    }
  });

  test("without a reason work, and are reported", async () => {
    const body = "## A\n\n1. [C1]\n\n<!-- allow height-order -->\n\n2. [R1]";
    expect(await messages(kit(body, LIST), "height-order")).toEqual([]);
    expect(await messages(kit(body, LIST), "allow-unused")).toEqual([]);
    expect(await messages(kit(body, LIST), "allow-reason")).toHaveLength(1);
  });

  test("at a stage's head hold for the text before its first step, too", async () => {
    const body = "## A\n\n1. [R1]\n\n## B\n\nSee [R77].\n\n1. Text.";
    expect(await messages(kit(body, LIST), "unknown-part")).toHaveLength(1);
    const allowed = body.replace(
      "B\n",
      "B\n\n<!-- allow unknown-part: R77 is in the old kit -->\n",
    );
    expect(await messages(kit(allowed, LIST), "unknown-part")).toEqual([]);
    expect(await messages(kit(allowed, LIST), "allow-unused")).toEqual([]);
    const elsewhere = body.replace("A\n", "A\n\n<!-- allow unknown-part: not there -->\n");
    expect(await messages(kit(elsewhere, LIST), "unknown-part")).toHaveLength(1);
  });

  test("below the last step concern nothing", async () => {
    const body = "## A\n\n1. [R1]\n\n<!-- allow height-order: so -->\n\n## B\n\n1. Text.";
    const [message] = await messages(kit(body, LIST), "allow-unused");
    expect(message).toContain("No step of this stage follows the comment");
  });

  test("of a check that does not exist take the nearest code by the fix", async () => {
    const body = "## A\n\n1. [C1]\n\n<!-- allow hight-order: so -->\n\n2. [R1]";
    expect(await fixed(body, "allow-unused")).toContain("<!-- allow height-order: so -->");
  });

  test("are removed with their line, or alone where the line holds more", async () => {
    const own = "## A\n\n1. [R1]\n\n  <!-- allow too-tall: so -->\n\n2. [R2]";
    expect(await fixed(own, "allow-unused")).toBe("## A\n\n1. [R1]\n\n\n2. [R2]\n");
    const shared = "## A\n\n1. [R1] <!-- allow too-tall: so --> flush.";
    expect(await fixed(shared, "allow-unused")).toBe("## A\n\n1. [R1]  flush.\n");
  });
});

describe("What is almost a mark or a figure", () => {
  test("is drawn where it stands", async () => {
    const { found, expected } = await drawn(
      kit(
        `## A

1. Solder [R1](4k7) and [R2].
          ^^^^^^^^^ mark-syntax`,
        LIST,
      ),
      "mark-syntax",
    );
    expect(found).toEqual(expected);
  });

  test("has a safe fix only where nothing but its spelling changes", async () => {
    expect(await fixesOf("## A\n\n1. Solder [R1~R4].", "mark-syntax")).toEqual([
      expect.stringMatching(/\(safe\)$/),
    ]);
    for (const mark of ["[R1–]", "[latr: R1]", "[fit: R1]", "[R4–R1]"]) {
      const fixes = await fixesOf(`## A\n\n1. Solder ${mark}.`, "mark-syntax");
      expect(fixes, mark).toHaveLength(1);
      expect(fixes[0], mark).not.toContain("(safe)");
    }
  });

  test("is not ordinary Markdown", async () => {
    const body =
      "## A\n\n- [ ] a task\n- [x] done\n\n1. [a link](b.md), [a note][n], `[R1-]`, ![R1-](x.jpg)\n\n[n]: c.md";
    expect(await messages(kit(body, LIST), "mark-syntax")).toEqual([]);
  });
});
