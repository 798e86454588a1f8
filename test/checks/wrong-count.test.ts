import { describe, expect, test } from "vitest";
import { kit, messages } from "./kit.ts";

const CODE = "wrong-count";

async function found(steps: string, list: string, more = ""): Promise<string[]> {
  const head = list.startsWith("Designator") ? "" : "Designator,Quantity,Description\n";
  return messages(kit(`## Case\n\n${steps}`, head + list, more), CODE);
}

describe("Pieces of hardware", () => {
  test("left over are a warning, information in a draft", async () => {
    expect(await found("1. Screw [2 × M3x10].", ",4,M3x10")).toEqual([
      expect.stringMatching(/^warning: The list supplies 4 × M3x10, the guide uses 2, so 2 are/),
    ]);
    expect(await found("1. Screw [2 × M3x10].\n\n## Test\n", ",4,M3x10")).toEqual([
      expect.stringMatching(/^information: /),
    ]);
  });

  test("of a line that no step names are left over", async () => {
    expect(await found("1. Done [own: tape], [see: x].\n2. [1 × nut]", ",1,nut\n,4,M3x10")).toEqual(
      [expect.stringContaining("no step uses any")],
    );
  });

  test("may be spares by the list's column or the guide's word", async () => {
    const spare = "Designator,Quantity,Spare,Description\n,6,2,M3x10";
    expect(await found("1. Screw [4 × M3x10].", spare)).toEqual([]);
    expect(await found("1. Screw [6 × M3x10].", spare)).toEqual([]);
    expect(await found("1. Screw [3 × M3x10].", spare)).toHaveLength(1);
    expect(await found("1. Screw [4 × M3x10].", ",6,M3x10", "spares: { M3x10: 2 }\n")).toEqual([]);
  });

  test("used beyond the supply are an error where the bag runs out, and only there", async () => {
    const steps = "1. Screw [2 × M3x10].\n2. Screw [3 × M3x10].\n3. Screw [1 × M3x10].";
    expect(await found(steps, ",4,M3x10")).toEqual([
      "error: Step 1.2 brings the use of M3x10 to 5, but the list supplies 4. Correct the number in a step, or the quantity in the list.",
    ]);
  });

  test("lent to a trial come back with remove", async () => {
    const steps = "1. Hold [try: 4 × M3x10].\n2. Off [remove: 4 × M3x10].\n3. Fix [4 × M3x10].";
    expect(await found(steps, ",4,M3x10")).toEqual([]);
    expect(
      await found(
        "1. Hold [try: 4 × M3x10].\n2. Fix [4 × M3x10].\n3. Off [remove: 4 × M3x10].",
        ",4,M3x10",
      ),
    ).toHaveLength(1);
  });

  test("are named by the first cell that no other line shares, so that the name is a key", async () => {
    const list =
      "Designator,Quantity,Value,Description,Part Number\n,2,bush,for M3,B-1\n,1,knob,with index,K-15\n,1,knob,with index,K-30";
    const names = (await found("1. Start.", list)).map(
      (text) => /\[1? ?2? ?× (.+)\]/.exec(text)?.[1],
    );
    expect(names).toEqual(["bush", "K-15", "K-30"]);
    expect(
      await found("1. Screw [2 × bush].\n2. Push [1 × K-15].\n3. Push [1 × K-30].", list),
    ).toEqual([]);
  });

  test("are shown as a mark could name them, or without an example", async () => {
    const list =
      'Designator,Item,Quantity,Value,Description\n,7,1,knob,"for 6 mm, black"\n,8,1,knob,"for 6 mm, red"\n,,1,"tape, thin",\n,,1,"tape, wide",\n,,1,"screw, short",';
    expect(await found("1. Start.", list)).toEqual([
      "warning: The list supplies 1 × for 6 mm, black, and no step uses any. Mark them where they go, as in [1 × item 7].",
      "warning: The list supplies 1 × for 6 mm, red, and no step uses any. Mark them where they go, as in [1 × item 8].",
      "warning: The list supplies 1 × tape, thin, and no step uses any. Mark them where they go.",
      "warning: The list supplies 1 × tape, wide, and no step uses any. Mark them where they go.",
      "warning: The list supplies 1 × screw, short, and no step uses any. Mark them where they go, as in [1 × screw].",
    ]);
  });

  test("are not counted where the list gives no number or the line is optional", async () => {
    expect(await found("1. Use [2 × nut].", "Designator,Description\n,nut\n,bolt")).toEqual([]);
    const optional = "Designator,Quantity,Description,Fitted\n,2,nut,optional\n,1,bolt,yes";
    expect(await found("1. Use [1 × bolt].", optional)).toEqual([]);
  });
});

describe("A line supplied by length", () => {
  test("leaves offcuts without a finding", async () => {
    expect(await found("1. Wind [820 mm × wire].", ",1 m,wire")).toEqual([]);
  });

  test("must suffice, and may be used up to the last millimetre", async () => {
    const three = "1. Cut [0.1 m × wire].\n2. Cut [0.2 m × wire].";
    expect(await found(three, ",0.3 m,wire")).toEqual([]);
    expect(await found(`${three}\n3. Cut [1 mm × wire].`, ",0.3 m,wire")).toEqual([
      expect.stringContaining(
        "With step 1.3 the guide uses 301 mm of wire, but the list supplies 300 mm.",
      ),
    ]);
  });

  test("is not used up by what is put aside, tried or taken out again", async () => {
    const aside =
      "1. Keep [later: 0.8 m × wire].\n2. Try [try: 0.8 m × wire].\n3. [remove: 0.8 m × wire]";
    expect(await found(`${aside}\n4. Wind [1 m × wire].`, ",1 m,wire")).toEqual([]);
  });

  test("is not used by the piece", async () => {
    expect(await found("1. Use [1 × wire].", ",1 m,wire")).toEqual([
      expect.stringMatching(/^warning: wire is supplied by length \(1 m\)/),
    ]);
  });
});
