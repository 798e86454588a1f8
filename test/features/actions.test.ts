import { describe, expect, test } from "vitest";
import { actionsAt } from "../../server/src/features/actions/all.ts";
import { allowHere } from "../../server/src/features/actions/allow.ts";
import { Service } from "../../server/src/service.ts";
import { MemoryFiles } from "../memoryFiles.ts";
import { atCursor, edited, FOLDER } from "./cursor.ts";

const LIST = `--- file: parts.csv
Designator,Value,Height
R1,1k,2.5
R2,2k,2.5
K1,RLY,11
C1,1u,5`;

function kit(body: string): string {
  return `---\nparts: parts.csv\n---\n\n## A\n\n${body}\n${LIST}`;
}

async function offered(body: string) {
  const at = await atCursor(kit(body));
  const actions = [...actionsAt(at.guide, { uri: at.uri, start: at.offset, end: at.offset })];
  return { at, actions, titles: actions.map(({ title }) => title) };
}

/** The body after the action whose title begins so. */
async function done(body: string, title: string): Promise<string> {
  const { at, actions } = await offered(body);
  const action = actions.find((one) => one.title.startsWith(title))!;
  return edited(at, action.edits[0]!.edits).split("## A\n\n")[1]!.trimEnd();
}

describe("moving a step", () => {
  const BODY =
    "1. Fit [R1].\n   ![a](a.png)\n\n2. Fit [¦R2].\n\n   > **CAUTION: heat.** Hot.\n\n3. Fit [K1].";

  test("up, past the picture of the one before", async () => {
    expect(await done(BODY, "Move step 1.2 up")).toBe(
      "1. Fit [R2].\n\n   > **CAUTION: heat.** Hot.\n\n2. Fit [R1].\n   ![a](a.png)\n\n3. Fit [K1].",
    );
  });

  test("down, with its note", async () => {
    expect(await done(BODY, "Move step 1.2 down")).toBe(
      "1. Fit [R1].\n   ![a](a.png)\n\n2. Fit [K1].\n\n3. Fit [R2].\n\n   > **CAUTION: heat.** Hot.",
    );
  });

  test.each(["up", "down"])("%s, and the author stays at the same letter", async (way) => {
    const { at, actions } = await offered(BODY);
    const { edits, goOn } = actions.find(({ title }) => title === `Move step 1.2 ${way}`)!;
    expect(edited(at, edits[0]!.edits).slice(goOn!.offset)).toMatch(/^R2\]\.\n\n {3}> \*\*CAUTION/);
  });

  test("not past a note that stands between steps", async () => {
    const body = "1. Fit [R1].\n\n> **CAUTION: heat.** Hot.\n\n2. Fit [¦R2].";
    expect((await offered(body)).titles).not.toContain("Move step 1.2 up");
  });

  test("a sub-step moves its step", async () => {
    const body = "1. Fit [R1].\n2. Case\n   1. Drill ¦it.\n   2. Fix it.";
    expect(await done(body, "Move step 1.2 up")).toBe(
      "1. Case\n   1. Drill it.\n   2. Fix it.\n2. Fit [R1].",
    );
  });

  test("not over the ends of the stage", async () => {
    expect((await offered("1. Fit [¦R1].\n2. Fit [R2].")).titles).not.toContain("Move step 1.1 up");
    expect((await offered("1. Fit [R1].\n2. Fit [¦R2].")).titles).not.toContain(
      "Move step 1.2 down",
    );
    expect((await offered("## B\n\nWor¦ds.\n\n## C\n\n1. [R1]")).titles).toEqual([]);
  });
});

describe("putting a part aside", () => {
  test.each([
    ["1. Fit [¦K1].", "1. Fit [later: K1]."],
    ["1. Fit [R1, ¦K1, R2].", "1. Fit [R1, R2] [later: K1]."],
    ["1. Fit [R1, ¦K1].", "1. Fit [R1] [later: K1]."],
    ["1. Fit [¦R1–R2, K1].", "1. Fit [K1] [later: R1–R2]."],
  ])("%s", async (before, after) => {
    expect(await done(before, "Put ")).toBe(after);
  });

  test.each(["1. Fit [later: ¦K1].", "1. Fit [X¦9].", "1. K¦1 [R1].", "1. Fit [¦C1, 2]."])(
    "not in %s",
    async (body) => {
      const { titles } = await offered(body);
      expect(titles.filter((title) => title.startsWith("Put"))).toEqual([]);
    },
  );
});

describe("splitting a step", () => {
  test.each([
    ["1. Fit [R1]. Then ¦cut the leads.", "1. Fit [R1].\n2. Then cut the leads."],
    ["1. Fit [R1]. Then [C1] ¦next. Cut.", "1. Fit [R1].\n2. Then [C1] next. Cut."],
    ["1. Fit [R1]. **Cut** ¦it.\n   ![a](a.png)", "1. Fit [R1].\n2. **Cut** it.\n   ![a](a.png)"],
    ["9. Fit [R1]. Cut ¦it.", "9. Fit [R1].\n9. Cut it."],
    ["1. A [R1].\n   1. Fit it. Cut ¦it.", "1. A [R1].\n   1. Fit it.\n   2. Cut it."],
    ["1. Fit [R1].\n   Cut ¦it.", "1. Fit [R1].\n2. Cut it."],
    [
      "1. Fit [R1]. Cut ¦it.\n2. A [R2].\n   1. Look.\n\n> **CAUTION: heat.** Hot.\n\n3. B.",
      "1. Fit [R1].\n2. Cut it.\n3. A [R2].\n   1. Look.\n\n> **CAUTION: heat.** Hot.\n\n4. B.",
    ],
    ["1. Fit [R1]. Cut ¦it.\n1. A.\n1. B.", "1. Fit [R1].\n2. Cut it.\n1. A.\n1. B."],
    ["8. Fit [R1]. Cut ¦it.\n9. A.\n10. B.", "8. Fit [R1].\n9. Cut it.\n9. A.\n10. B."],
  ])("%s", async (before, after) => {
    expect(await done(before, "Make a step")).toBe(after);
  });

  test.each(["1. Fi¦t [R1]. Cut.", "Fit [R1]. Cut ¦it.", "1. Fit [¦R1] flush."])(
    "not in %s",
    async (body) => {
      const { titles } = await offered(body);
      expect(titles.filter((title) => title.startsWith("Make"))).toEqual([]);
    },
  );
});

describe("writing the result of a figure", () => {
  test.each([
    ["1. {V1 = 12 V} at {2 * ¦V1}. [R1]", "1. {V1 = 12 V} at {2 * V1 = 24 V}. [R1]"],
    ["1. {P(R1) = 2 mA * 2 mA * ¦R1}. [R1]", "1. {P(R1) = 2 mA * 2 mA * R1 = 4 mW}. [R1]"],
  ])("%s", async (before, after) => {
    expect(await done(before, "Write the result")).toBe(after);
  });

  test.each(["1. {¦V1 = 12 V} [R1]", "1. {2 * ¦X} [R1]", "1. {1 V * ¦2 = 2 V} [R1]"])(
    "not in %s",
    async (body) => {
      const { titles } = await offered(body);
      expect(titles.filter((title) => title.startsWith("Write"))).toEqual([]);
    },
  );
});

describe("allowing a finding", () => {
  /** The guide with the comment for a finding at the cursor, and what is found in it then. */
  async function allowed(body: string, code: string, reason = "it is meant so") {
    const at = await atCursor(kit(body));
    const action = allowHere(at.guide, at.uri, at.offset, code);
    if (!action) return undefined;
    const { uri, offset } = action.goOn!;
    const after = edited(at, action.edits[0]!.edits);
    const text = after.slice(0, offset) + reason + after.slice(offset);
    const files = new MemoryFiles();
    for (const [name, content] of at.files) files.set(FOLDER + name, content);
    files.set(uri, text);
    const service = new Service(files);
    service.follow(uri);
    await service.settle();
    service.takeChanges();
    const codes = service.diagnoses(uri).map((one) => one.code);
    return { text: text.split("## A\n\n")[1]!, codes, title: action.title };
  }

  test("above the step, indented like it", async () => {
    const body = "1. Fit [R1].\n2. Fit [¦K1].\n3. Fit [R2, C1].";
    const { text, codes, title } = (await allowed(body, "height-order"))!;
    expect(text).toContain("<!-- allow height-order: it is meant so -->\n2. Fit [K1].");
    expect(title).toBe("Allow height-order in step 1.2, with a reason");
    expect(codes).not.toContain("allow-unused");
    expect(codes).not.toContain("allow-reason");
  });

  test("above a sub-step", async () => {
    const { text } = (await allowed("1. A [R1].\n   1. Fit [¦C1].", "duplicate-part"))!;
    expect(text).toContain("   <!-- allow duplicate-part: it is meant so -->\n   1. Fit [C1].");
  });

  test("without a reason it says so", async () => {
    const { codes } = (await allowed("1. Fit [R1].\n2. Fit [¦K1].", "height-order", ""))!;
    expect(codes).toContain("allow-reason");
  });

  test("at the head of the stage, where the finding is in no step", async () => {
    const at = await atCursor(`---\nparts: parts.csv\n---\n\n## A¦\n\n1. Fit [R1].\n${LIST}`);
    const action = allowHere(at.guide, at.uri, at.offset, "heading-empty")!;
    expect(edited(at, action.edits[0]!.edits)).toContain(
      "## A\n\n<!-- allow heading-empty:  -->\n\n1. Fit [R1].",
    );
  });

  test("not between the rows of a table", async () => {
    expect(await allowed("| a |\n|---|\n| [¦R1] |\n| [R2] |", "x")).toBeUndefined();
  });
});

describe("the parts table of a stage", () => {
  async function inserted(body: string, list: string): Promise<string> {
    const at = await atCursor(
      `---\nparts: parts.csv\n---\n\n${body}\n--- file: parts.csv\n${list}`,
    );
    const selection = { uri: at.uri, start: at.offset, end: at.offset };
    const action = [...actionsAt(at.guide, selection)].find(({ title }) =>
      title.startsWith("Insert the parts table"),
    )!;
    return edited(at, action.edits[0]!.edits).split("---\n\n")[1]!.trimEnd();
  }

  const LINES =
    "Designator,Quantity,Value,Package\nR1-R4,4,4k7,R_Axial\nQ1,1,*BC547|B,TO-92\nU1,1,NE555,DIP-8\n,6,M3x10,";

  test("names what its steps fit, a row for each line of the list", async () => {
    const body =
      "## B¦oard\n\n1. Fit [R1–R3] and [Q1].\n2. Put [later: U1] aside.\n3. Fix it [4 × M3x10].";
    expect(await inserted(body, LINES)).toBe(
      "## Board\n\n<!-- parts table -->\n\n| Parts | Quantity | Value | Package |\n|---|---|---|---|\n" +
        "| R1–R3 | 3 | 4k7 | R_Axial |\n| Q1 | 1 | \\*BC547\\|B | TO-92 |\n|  | 4 | M3x10 |  |\n\n<!-- end -->" +
        body.slice("## B¦oard".length),
    );
  });

  test("is current as soon as it stands, and stale when a step fits something else", async () => {
    const body = "## B¦oard\n\n1. Fit [R1–R3] and [Q1].\n2. Fit [U1].";
    const whole = `---\nparts: parts.csv\n---\n\n${await inserted(body, LINES)}\n`;
    const found = async (text: string) => {
      const files = new MemoryFiles();
      files.set(`${FOLDER}parts.csv`, LINES);
      const service = new Service(files);
      service.open(`${FOLDER}guide.md`, 1, text);
      await service.settle();
      service.takeChanges();
      return service
        .diagnoses(`${FOLDER}guide.md`)
        .filter(({ code }) => code === "stale-parts-table");
    };
    expect(await found(whole)).toEqual([]);
    expect(await found(whole.replace("|---|---|---|---|", "| :-- | --: | --- | --- |"))).toEqual(
      [],
    );
    expect(await found(whole.replaceAll("\n", "\r\n"))).toEqual([]);
    const changed = whole.replace("[R1–R3]", "[R1–R4]");
    const [stale] = await found(changed);
    const { span, text } = stale!.fixes()[0]!.edits[0]!.edits[0]!;
    const mended = changed.slice(0, span.start) + text + changed.slice(span.end);
    expect(mended).toBe(changed.replace("| R1–R3 | 3 |", "| R1–R4 | 4 |"));
    expect(await found(mended)).toEqual([]);
    expect((await found(whole.replace("<!-- end -->", "")))[0]!.message).toContain(
      "where this parts table ends",
    );
  });

  test("not where there is one, nor where nothing is fitted", async () => {
    expect(
      (await offered("<!-- parts table -->\n<!-- end -->\n\n1. Fit [¦R1].")).titles,
    ).not.toContain("Insert the parts table of stage 1");
  });
});
